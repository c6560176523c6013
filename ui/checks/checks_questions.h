// SPDX-License-Identifier: GPL-3.0-or-later
// The open questions that only checks ask, kept current beside the window's thread: working every
// check of a large book takes longer than an edit may.
#pragma once

#include "core/book/book.h"
#include "core/parts/questions.h"
#include "ui/forecast/beside.h"
#include "ui/forecast/records_copy.h"

#include <QTimer>

#include <memory>
#include <vector>

namespace ohmwright::ui {

class ChecksQuestions : public QObject
{
    Q_OBJECT

public:
    explicit ChecksQuestions(Book &book, QObject *parent = nullptr);

    // Of the book as it was a moment ago; empty before they were first worked out.
    [[nodiscard]] const std::vector<Question> &latest() const { return m_latest; }

signals:
    void updated(); // they are others than before

private:
    void copyOn();
    void take(std::vector<Question> questions, int run);

    Book &m_book;
    QTimer m_soon;
    QTimer m_copying;
    std::shared_ptr<RecordsCopy> m_copy; // while it is being taken
    std::vector<Question> m_latest;
    int m_run = 0;
    Beside m_beside; // last: its end waits for work that uses the others
};

} // namespace ohmwright::ui
