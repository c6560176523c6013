// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/book_window.h"

#include "core/forecast/loom_facts.h"
#include "core/interchange/interchange.h"
#include "core/parts/questions.h"
#include "ui/bench/bench_page.h"
#include "ui/bench/work_log_panel.h"
#include "ui/budget/budget_page.h"
#include "ui/build_order/build_order_page.h"
#include "ui/cards/record_card.h"
#include "ui/cards/record_pages.h"
#include "ui/cards/records_panel.h"
#include "ui/checks/book_checks_source.h"
#include "ui/checks/checks_page.h"
#include "ui/checks/checks_questions.h"
#include "ui/checks/one_line_view.h"
#include "ui/forecast/choice_options.h"
#include "ui/forecast/forecast_page.h"
#include "ui/forecast/forecaster.h"
#include "ui/history/history_window.h"
#include "ui/parts/parts_page.h"
#include "ui/sheet/sheet_page.h"
#include "ui/shell/book_find.h"
#include "ui/shell/outside.h"
#include "ui/shell/shell_window.h"
#include "ui/shell/theme.h"

#include <QAction>
#include <QFileInfo>

namespace ohmwright::ui {

namespace {

// How often to look whether another window changed the file; one small read.
constexpr int kLookEveryMs = 1000;

} // namespace

BookWindow::BookWindow(std::unique_ptr<Book> book, Theme &theme, Outside &outside, QObject *parent)
    : QObject(parent), m_book(std::move(book)), m_theme(theme), m_outside(outside),
      m_checksSource(std::make_unique<BookChecksSource>(*m_book)),
      m_find(std::make_unique<BookFind>(*m_book)), m_shell(std::make_unique<ShellWindow>(theme))
{
    makePages();
    makeActions();
    m_shell->setFindSource(m_find.get());
    connect(m_shell.get(), &ShellWindow::hitChosen, this, &BookWindow::follow);
    connect(m_shell.get(), &ShellWindow::undoWanted, this, [this] { travel(true); });
    connect(m_shell.get(), &ShellWindow::redoWanted, this, [this] { travel(false); });
    connect(m_book.get(), &Book::changed, this, &BookWindow::showState);
    m_others.setInterval(kLookEveryMs);
    connect(&m_others, &QTimer::timeout, this, &BookWindow::lookForOthersEdits);
    m_others.start();
    showState();
    m_shell->showPage(QStringLiteral("bench"));
    if (m_book->isReadOnly())
        m_shell->say(tr("This book can be looked at but not changed here. Save a copy elsewhere to "
                        "work on it."),
                     Tone::Problem);
}

// Pages hold a reference to the book, so they must go first.
BookWindow::~BookWindow()
{
    m_shell.reset();
}

void BookWindow::makePages()
{
    m_forecaster = std::make_unique<Forecaster>(*m_book);
    m_checksQuestions = std::make_unique<ChecksQuestions>(*m_book);
    connect(m_checksQuestions.get(), &ChecksQuestions::updated, this, [this] {
        m_bench->setAskedByChecks(m_checksQuestions->latest());
        m_parts->setAskedByChecks(m_checksQuestions->latest());
        showState();
    });
    m_bench = new BenchPage(*m_book, *m_forecaster, m_theme);
    m_parts = new PartsPage(*m_book, m_theme, m_outside);
    m_parts->leaveLogKeyToWindow();
    m_buildOrder = new BuildOrderPage(*m_book, m_theme, &m_outside);
    m_budget = new BudgetPage(*m_book, m_theme);
    m_checks = new ChecksPage(*m_book, *m_checksSource, m_theme, m_outside);
    m_checksPages =
        new RecordPages(*m_book, m_theme, m_checks, tr("Checks"),
                        {QStringLiteral("check_figure"), QStringLiteral("rated_curve"),
                         QStringLiteral("own_threshold"), QStringLiteral("safety_system"),
                         QStringLiteral("work_permit")});
    auto *diagram = new OneLineView(*m_book, m_theme, m_outside);
    m_checksPages->addPage(QStringLiteral("diagram"), tr("Diagram"), diagram);
    m_sheet = new SheetPage(*m_book, m_theme, m_outside);
    m_buildOrderPages =
        new RecordPages(*m_book, m_theme, m_buildOrder, tr("Chart and moves"),
                        {QStringLiteral("choice"), QStringLiteral("working_time"),
                         QStringLiteral("special_day"), QStringLiteral("work_entry")});
    auto *forecast = new ForecastPage(*m_book, *m_forecaster, m_theme);
    m_buildOrderPages->addPage(QStringLiteral("forecast"), tr("Forecast"), forecast);
    m_shell->addPage(m_bench, tr("Bench"), QStringLiteral("bench"), QStringLiteral("bench"));
    m_shell->addPage(m_parts, tr("Parts"), QStringLiteral("parts"), QStringLiteral("parts"));
    m_shell->addPage(m_buildOrderPages, tr("Build order"), QStringLiteral("build_order"),
                     QStringLiteral("build_order"));
    m_shell->addPage(m_budget, tr("Budget"), QStringLiteral("budget"), QStringLiteral("budget"));
    m_shell->addPage(m_checksPages, tr("Checks"), QStringLiteral("checks"),
                     QStringLiteral("checks"));
    m_shell->addPage(m_sheet, tr("Build sheet"), QStringLiteral("sheet"), QStringLiteral("sheet"));

    const auto say = [this](const QString &sentence, Tone tone) {
        m_shell->say(sentence, tone);
    };
    connect(m_parts, &PartsPage::said, this, say);
    connect(m_buildOrder, &BuildOrderPage::said, this, say);
    connect(m_budget, &BudgetPage::said, this, say);
    connect(m_sheet, &SheetPage::said, this, say);
    connect(m_checks, &ChecksPage::said, this, say);
    connect(m_checksPages, &RecordPages::said, this, say);
    connect(diagram, &OneLineView::said, this, say);
    connect(m_bench, &BenchPage::partWanted, this, &BookWindow::showPart);
    connect(m_buildOrder, &BuildOrderPage::partWanted, this, &BookWindow::showPart);
    connect(m_buildOrder, &BuildOrderPage::openingWanted, this, [this](const QString &key) {
        m_shell->showPage(QStringLiteral("parts"));
        m_parts->showOpening(key);
    });
    connect(m_budget, &BudgetPage::partWanted, this, &BookWindow::showPart);
    connect(m_buildOrder, &BuildOrderPage::recordWanted, this, &BookWindow::showRecord);
    connect(m_bench, &BenchPage::taskWanted, this, &BookWindow::showTask);
    connect(m_bench, &BenchPage::moveWanted, this,
            [this](const QString &milestone, plan::MoveKind kind, const QString &subject) {
                m_shell->showPage(QStringLiteral("build_order"));
                m_buildOrderPages->showFirst();
                m_buildOrder->showMove(milestone, kind, subject);
            });
    connect(m_parts, &PartsPage::taskWanted, this, &BookWindow::showTask);
    connect(m_parts, &PartsPage::historyWanted, this, [this](Id<Part> part) {
        if (const Part *row = m_book->records().find(part))
            history().showOf({"part", part.value(), row->name});
    });
    m_buildOrder->setForecastMissing(tr("The forecast is being worked out."));
    connect(m_forecaster.get(), &Forecaster::updated, this, [this] {
        const auto told = m_forecaster->latest();
        m_buildOrder->setForecast(
            forecast::loomForecastOf(told->plan, told->forecast, told->network, told->orders),
            told->network, told);
    });
    connect(forecast, &ForecastPage::said, this, say);
    connect(forecast, &ForecastPage::partWanted, this, &BookWindow::showPart);
    connect(forecast, &ForecastPage::taskWanted, this, &BookWindow::showTask);
    connect(forecast, &ForecastPage::recordWanted, this, &BookWindow::showRecord);
    connect(m_buildOrderPages, &RecordPages::said, this, say);
    connect(m_buildOrderPages, &RecordPages::madePanel, this, [this, say](RecordsPanel *panel) {
        if (panel->kind().table() != "choice")
            return;
        auto *options = new ChoiceOptions(*m_book, *m_forecaster, m_theme);
        connect(options, &ChoiceOptions::said, this, say);
        connect(options, &ChoiceOptions::decided, panel,
                [panel] { panel->setFocus(Qt::OtherFocusReason); });
        panel->card().addOnTop(options, [options](std::int64_t id) { options->showChoice(id); });
    });
    connect(m_bench, &BenchPage::forecastWanted, this, [this] {
        m_shell->showPage(QStringLiteral("build_order"));
        m_buildOrderPages->showPage(QStringLiteral("forecast"));
    });
    connect(&m_bench->workLog(), &WorkLogPanel::said, this, say);
    connect(&m_bench->workLog(), &WorkLogPanel::taskWanted, this, &BookWindow::showTask);
    connect(m_bench, &BenchPage::pageWanted, m_shell.get(), &ShellWindow::showPage);
    connect(m_bench, &BenchPage::logWanted, this, [this] {
        m_shell->showPage(QStringLiteral("parts"));
        m_parts->openLogSheet();
    });
}

void BookWindow::makeActions()
{
    const auto action = [this](const QString &text, const QKeySequence &keys, auto &&act) {
        auto *made = new QAction(text, this);
        made->setShortcut(keys);
        connect(made, &QAction::triggered, this, act);
        return made;
    };
    m_shell->setBookActions({
        action(tr("&New book…"), QKeySequence::New, [this] { emit newWanted(); }),
        action(tr("&Open a book…"), QKeySequence::Open, [this] { emit openWanted(); }),
        nullptr,
        action(tr("Save a &copy…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S),
               [this] { saveCopy(); }),
        action(tr("Write &interchange JSON…"), QKeySequence(), [this] { writeInterchange(); }),
        nullptr,
        action(tr("Log a &part"), QKeySequence(Qt::CTRL | Qt::Key_L),
               [this] {
                   m_shell->showPage(QStringLiteral("parts"));
                   m_parts->openLogSheet();
               }),
        action(tr("&History"), QKeySequence(Qt::CTRL | Qt::Key_H),
               [this] { history().showWhole(); }),
        action(tr("C&lose"), QKeySequence::Close, [this] { m_shell->close(); }),
    });
}

HistoryWindow &BookWindow::history()
{
    if (!m_history)
        m_history = new HistoryWindow(*m_book, m_theme, m_shell.get());
    return *m_history;
}

void BookWindow::showState()
{
    m_shell->setBookTitle(m_book->records().build().title);
    m_shell->setUndoStep(m_book->undoText().value_or(QString()));
    m_shell->setRedoStep(m_book->redoText().value_or(QString()));
    const Records &records = m_book->records();
    const auto open = joined(records, openQuestions(records), m_checksQuestions->latest()).size();
    m_shell->setPageBadge(QStringLiteral("parts"), open ? tr("%1 open").arg(open) : QString(),
                          open == 1 ? tr("1 open question") : tr("%1 open questions").arg(open));
}

void BookWindow::travel(bool back)
{
    const QString what = (back ? m_book->undoText() : m_book->redoText()).value_or(QString());
    const Outcome done = back ? m_book->undo() : m_book->redo();
    if (!done)
        m_shell->say(QStringList{done.error().sentence, done.error().whatToDo}.join(u' ').trimmed(),
                     Tone::Problem);
    else
        m_shell->say(back ? tr("Taken back: %1").arg(what) : tr("Done again: %1").arg(what),
                     Tone::Told);
}

void BookWindow::lookForOthersEdits()
{
    const Result<bool> changed = m_book->refresh();
    if (!changed) {
        // locked for a moment by the other window: the next look will tell
        if (changed.error().code != ProblemCode::Locked)
            m_shell->say(changed.error().sentence, Tone::Problem);
    } else if (*changed) {
        m_shell->say(tr("Another window changed this book; it is up to date here."), Tone::Told);
    }
}

void BookWindow::saveCopy()
{
    const QString name = QFileInfo(m_book->path()).completeBaseName();
    QString path = m_outside.chooseSaveFile(
        m_shell.get(), tr("Save a copy"), name + tr("-copy.ohmwright"), tr("Books (*.ohmwright)"));
    if (path.isEmpty())
        return;
    if (QFileInfo(path).suffix().isEmpty())
        path += QStringLiteral(".ohmwright");
    const Outcome saved = m_book->saveCopy(path);
    if (saved)
        m_shell->say(tr("Saved a copy as %1.").arg(path));
    else
        m_shell->say(
            QStringList{saved.error().sentence, saved.error().whatToDo}.join(u' ').trimmed(),
            Tone::Problem);
}

void BookWindow::writeInterchange()
{
    const QString name = QFileInfo(m_book->path()).completeBaseName();
    const QString path =
        m_outside.chooseSaveFile(m_shell.get(), tr("Write interchange JSON"),
                                 name + QStringLiteral(".json"), tr("JSON (*.json)"));
    if (path.isEmpty())
        return;
    const Outcome written = dumpFile(*m_book, path);
    if (written)
        m_shell->say(tr("Wrote %1 and its attachments.").arg(path));
    else
        m_shell->say(
            QStringList{written.error().sentence, written.error().whatToDo}.join(u' ').trimmed(),
            Tone::Problem);
}

void BookWindow::follow(const FindHit &hit)
{
    if (hit.key.startsWith(QLatin1String("part:")))
        showPart(hit.key.mid(5));
    else if (hit.key.startsWith(QLatin1String("task:")))
        showTask(hit.key.mid(5));
    else if (hit.key.startsWith(QLatin1String("record:")))
        showRecord(hit.key.section(u':', 1, 1), hit.key.section(u':', 2));
    else
        m_shell->showPage(hit.key);
}

void BookWindow::showPart(const QString &key)
{
    m_shell->showPage(QStringLiteral("parts"));
    m_parts->showPart(key);
}

// Whichever page has its card.
void BookWindow::showRecord(const QString &table, const QString &key)
{
    if (m_parts->showRecord(table, key))
        m_shell->showPage(QStringLiteral("parts"));
    else if (m_buildOrderPages->showRecord(table, key))
        m_shell->showPage(QStringLiteral("build_order"));
    else if (m_checksPages->showRecord(table, key))
        m_shell->showPage(QStringLiteral("checks"));
    else if (m_sheet->showRecord(table, key))
        m_shell->showPage(QStringLiteral("sheet"));
    else if (m_budget->showRecord(table, key))
        m_shell->showPage(QStringLiteral("budget"));
}

void BookWindow::showTask(const QString &key)
{
    m_shell->showPage(QStringLiteral("build_order"));
    m_buildOrderPages->showFirst();
    m_buildOrder->showTask(key);
}

} // namespace ohmwright::ui
