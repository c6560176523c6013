// SPDX-License-Identifier: GPL-3.0-or-later
// The find line's answers: parts, tasks, and every record that has a card.
#pragma once

#include "core/book/book.h"
#include "ui/shell/find_source.h"

#include <QTimer>

#include <vector>

namespace ohmwright::ui {

class BookFind final : public QObject, public FindSource
{
    Q_OBJECT

public:
    explicit BookFind(const Book &book);

    // Every word must occur somewhere in what is known of a thing; those whose title starts with
    // the text come first. Keys are "part:KEY", "task:KEY",
    // or "record:TABLE:KEY".
    [[nodiscard]] std::vector<FindHit> find(const QString &text) override;

private:
    struct Entry
    {
        FindHit hit;
        QString haystack; // folded
    };
    void index();

    const Book &m_book;
    std::vector<Entry> m_entries;
    bool m_stale = true;
    QTimer m_pause;
};

} // namespace ohmwright::ui
