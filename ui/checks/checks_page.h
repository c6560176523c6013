// SPDX-License-Identifier: GPL-3.0-or-later
// The Checks page: every verdict, grouped by what it protects, and one of them worked beside the
// list. Values are edited where they stand; changes can be tried on a scratch copy first.
#pragma once

#include "core/book/book.h"
#include "ui/checks/checks_order.h"
#include "ui/shell/message_strip.h"
#include "ui/shell/outside.h"

#include <QWidget>

#include <memory>

class QPushButton;

namespace ohmwright::ui {

class CheckSheet;
class ChecksList;
class Theme;
class TryBar;

class ChecksPage : public QWidget
{
    Q_OBJECT

public:
    // `source` must outlive the page. `book` is only listened to.
    ChecksPage(Book &book, ChecksSource &source, const Theme &theme, Outside &outside,
               QWidget *parent = nullptr);
    ~ChecksPage() override;

    // Opens the check with that id, and that subject unless it is empty. False if there is none.
    bool showCheck(const QString &id, const QString &subject = {});
    [[nodiscard]] bool isTrying() const { return m_scratch != nullptr; }
    [[nodiscard]] ChecksList &list() { return *m_list; }
    [[nodiscard]] CheckSheet &sheet() { return *m_sheet; }

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);

protected:
    void showEvent(QShowEvent *event) override;

private:
    void bookChanged();
    void refresh();
    void showChosen();
    Outcome edit(const QString &field, const QString &typed);
    void findOut(const QString &unknownName);
    void setTrying(bool trying);
    void keep();
    void drop();

    ChecksSource &m_source;
    std::unique_ptr<Scratch> m_scratch; // while trying
    std::vector<CheckEntry> m_entries;
    bool m_behind = true; // the book changed since the checks were worked
    ChecksList *m_list;
    CheckSheet *m_sheet;
    TryBar *m_bar;
    QPushButton *m_try;
};

} // namespace ohmwright::ui
