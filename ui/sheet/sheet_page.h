// SPDX-License-Identifier: GPL-3.0-or-later
// The Build sheet page: the sheet as it will be printed, kept current, and written as PDF or HTML;
// beside it what it is made of, to fill in.
#pragma once

#include "core/book/book.h"
#include "core/checks/check.h"
#include "core/sheet/working.h"
#include "core/verdicts/turning_words.h"
#include "ui/cards/attachment_opener.h"
#include "ui/shell/message_strip.h"
#include "ui/widgets/in_pauses.h"

#include <QByteArray>
#include <QThreadPool>
#include <QTimer>
#include <QWidget>

#include <memory>
#include <optional>
#include <utility>
#include <vector>

class QListWidget;
class QPushButton;

namespace ohmwright::sheet {
class PagedLayout;
}

namespace ohmwright::ui {

class CardStack;
class Outside;
class PagesView;
class RecordsPanel;
class SectionTitle;
class Theme;

class SheetPage : public QWidget
{
    Q_OBJECT

public:
    SheetPage(Book &book, const Theme &theme, Outside &outside, QWidget *parent = nullptr);
    ~SheetPage() override;

    // To a path already chosen; what was written, or why not, is said.
    void writeTo(const QString &path);
    [[nodiscard]] PagesView &pages() { return *m_pages; }
    // Opens the card of one of the records the sheet is made of. False for any other.
    bool showRecord(const QString &table, const QString &key);
    [[nodiscard]] QListWidget &made() { return *m_made; }
    [[nodiscard]] CardStack &cards() { return *m_cards; }

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);

protected:
    void showEvent(QShowEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    void makeList();
    void open(int row);
    void close();
    void shareWidth();
    void fillList();
    void addFiles();
    void addOpening(RecordsPanel &panel);

    // Off the window's thread: a long sheet takes seconds to lay out.
    void rebuild();
    void layOut(std::vector<Check> checks);
    QByteArray pictureOf(const Plot &plot);
    void take(std::shared_ptr<const sheet::PagedLayout> layout, int run);
    void chooseAndWrite(const QString &suffix, const QString &filter);

    Book &m_book;
    Outside &m_outside;
    AttachmentOpener m_opener;
    SectionTitle *m_title;
    QListWidget *m_made;
    QWidget *m_side;
    CardStack *m_cards;
    QListWidget *m_contents;
    PagesView *m_pages;
    std::shared_ptr<const sheet::PagedLayout> m_layout;
    QTimer m_soon;
    InPauses m_pauses;                      // for what would turn the verdicts
    std::optional<MendingSearch> m_mending; // of the book as it is
    bool m_stale = true;
    bool m_isBeingLaidOut = false; // what is shown, if anything, is older
    Working m_working = Working::Short;
    int m_run = 0;            // a layout that a newer one has overtaken is dropped
    QString m_writeWhenReady; // asked to write before the layout was there
    std::vector<std::pair<Plot, QByteArray>> m_plots; // drawn before
    QThreadPool m_worker; // last, so that it has finished before anything else goes
};

} // namespace ohmwright::ui
