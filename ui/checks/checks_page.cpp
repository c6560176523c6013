// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/checks_page.h"

#include "ui/checks/check_sheet.h"
#include "ui/checks/check_words.h"
#include "ui/checks/checks_list.h"
#include "ui/checks/try_bar.h"
#include "ui/shell/theme.h"

#include <QFontMetrics>
#include <QPushButton>
#include <QSplitter>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

ChecksPage::ChecksPage(Book &book, ChecksSource &source, const Theme &theme, Outside &outside,
                       QWidget *parent)
    : QWidget(parent), m_source(source), m_list(new ChecksList(theme)),
      m_sheet(new CheckSheet(
          theme, outside,
          [this](const QString &field, const QString &typed) { return edit(field, typed); })),
      m_bar(new TryBar(theme)), m_try(new QPushButton(tr("&Try changes")))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_bar);
    auto *split = new QSplitter(Qt::Horizontal);
    split->setChildrenCollapsible(false);
    auto *side = new QWidget;
    auto *inside = new QVBoxLayout(side);
    inside->setContentsMargins(8, 14, 16, 12);
    inside->addWidget(m_sheet);
    split->addWidget(m_list);
    split->addWidget(side);
    split->setStretchFactor(0, 2);
    split->setStretchFactor(1, 3);
    split->setSizes({490, 650});
    m_list->setMinimumWidth(305);
    // the widest table, results held against their limits, in whatever letters the desktop has
    constexpr int kWidest = 50; // characters
    const QFontMetrics metrics(theme.font(Lettering::Body));
    side->setMinimumWidth(std::max(520, metrics.averageCharWidth() * kWidest));
    column->addWidget(split, 1);
    m_bar->hide();

    m_try->setCheckable(true);
    m_try->setToolTip(tr("Change values on a scratch copy and see which verdicts turn"));
    m_try->setAccessibleDescription(m_try->toolTip());
    m_list->addAtEnd(m_try);
    connect(m_try, &QPushButton::toggled, this, &ChecksPage::setTrying);
    connect(m_bar, &TryBar::keepWanted, this, &ChecksPage::keep);
    connect(m_bar, &TryBar::dropWanted, this, &ChecksPage::drop);
    connect(m_list, &ChecksList::checkChosen, this, &ChecksPage::showChosen);
    connect(m_list, &ChecksList::opened, m_sheet, &CheckSheet::enter);
    connect(m_sheet, &CheckSheet::findOutWanted, this, &ChecksPage::findOut);
    connect(m_sheet, &CheckSheet::said, this, [this](const QString &sentence, bool problem) {
        emit said(sentence, problem ? Tone::Problem : Tone::Told);
    });
    connect(&book, &Book::changed, this, &ChecksPage::bookChanged);
    setFocusProxy(&m_list->table());
}

ChecksPage::~ChecksPage() = default;

void ChecksPage::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_behind)
        refresh();
}

void ChecksPage::bookChanged()
{
    m_behind = true;
    m_sheet->searchTurning(std::nullopt); // of the book as it was
    if (isVisible())
        refresh();
}

void ChecksPage::refresh()
{
    m_behind = false;
    std::vector<Check> inBook = m_source.checks();
    m_entries = m_scratch ? entriesOf(m_scratch->checks(), m_source, &inBook)
                          : entriesOf(std::move(inBook), m_source);
    if (m_scratch)
        m_bar->showTried(m_scratch->changes(), m_entries);
    m_list->setEntries(m_entries, isTrying());
    showChosen();
}

void ChecksPage::showChosen()
{
    const CheckEntry *chosen = m_list->chosen();
    if (!chosen) {
        m_sheet->showCheck(std::nullopt);
        return;
    }
    CheckView view;
    view.entry = *chosen;
    for (const QString &unknown : chosen->check.unknowns)
        if (m_source.isBeingFoundOut(chosen->check, unknown))
            view.beingFoundOut << unknown;
    view.trying = isTrying();
    if (m_scratch)
        view.tried = m_scratch->changes();
    const Check asked = chosen->check;
    m_sheet->showCheck(std::move(view));
    m_sheet->searchTurning(m_scratch ? m_scratch->turning(asked) : m_source.turning(asked));
}

bool ChecksPage::showCheck(const QString &id, const QString &subject)
{
    if (m_behind)
        refresh();
    const auto found =
        std::find_if(m_entries.begin(), m_entries.end(), [&](const CheckEntry &entry) {
            return entry.check.id == id && (subject.isEmpty() || entry.check.subject == subject);
        });
    if (found == m_entries.end())
        return false;
    m_list->choose(found->key);
    return true;
}

Outcome ChecksPage::edit(const QString &field, const QString &typed)
{
    m_behind = true; // unless the book tells us of the edit itself
    Outcome done = m_scratch ? m_scratch->set(field, typed) : m_source.edit(field, typed);
    if (!done)
        m_behind = false;
    else if (m_behind)
        refresh();
    return done;
}

void ChecksPage::findOut(const QString &unknownName)
{
    const CheckEntry *chosen = m_list->chosen();
    if (!chosen)
        return;
    m_behind = true;
    const Check asked = chosen->check;
    const Outcome made = m_source.findOut(asked, unknownName);
    if (!made) {
        m_behind = false;
        emit said(toldOf(made.error()), Tone::Problem);
        return;
    }
    if (m_behind)
        refresh();
    emit said(tr("A task finds out: %1.").arg(unknownName), Tone::Told);
}

void ChecksPage::setTrying(bool trying)
{
    if (trying == isTrying())
        return;
    const std::size_t forgotten = m_scratch ? m_scratch->changes().size() : 0;
    m_scratch = trying ? m_source.scratch() : nullptr;
    m_bar->setVisible(trying);
    m_try->setChecked(trying);
    refresh();
    if (!trying)
        m_list->table().setFocus(Qt::OtherFocusReason);
    if (forgotten > 0)
        emit said(tr("What was tried is dropped. The book is as it was."), Tone::Told);
}

void ChecksPage::keep()
{
    if (!m_scratch)
        return;
    m_behind = true;
    const std::size_t count = m_scratch->changes().size();
    const Outcome kept = m_scratch->keep();
    if (!kept) {
        m_bar->showProblem(toldOf(kept.error()));
        m_behind = false;
        return;
    }
    m_scratch.reset();
    m_bar->hide();
    m_try->setChecked(false);
    refresh();
    m_list->table().setFocus(Qt::OtherFocusReason);
    emit said(count == 1 ? tr("1 change is kept. Undo takes it back.")
                         : tr("%1 changes are kept. One undo takes them back.").arg(count),
              Tone::Told);
}

void ChecksPage::drop()
{
    setTrying(false);
}

} // namespace ohmwright::ui
