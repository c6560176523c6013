// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/bench/work_log_panel.h"

#include "core/parts/attachments.h"
#include "core/plan/work_log.h"
#include "ui/bench/bench_rows.h"
#include "ui/build_order/task_texts.h"
#include "ui/shell/theme.h"
#include "ui/widgets/drop_area.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/pick_or_new.h"

#include <QBuffer>
#include <QHBoxLayout>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

const QString kTask = QStringLiteral("task");
const QString kDay = QStringLiteral("worked_on");
const QString kTime = QStringLiteral("minutes");
const QString kHands = QStringLiteral("hands");
const QString kNote = QStringLiteral("note");

constexpr auto kHalf = EntryForm::Width::Half;
constexpr std::size_t kEntriesShown = 6;

QLabel *quiet()
{
    auto *label = new QLabel;
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

} // namespace

WorkLogPanel::WorkLogPanel(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_underWay(quiet()),
      m_form(new EntryForm(theme, tr("&Enter these hours"))), m_task(new PickOrNew(theme)),
      m_startStop(new QPushButton), m_photos(new DropArea(theme)), m_days(new QVBoxLayout)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    auto *clock = new QHBoxLayout;
    clock->addWidget(m_underWay, 1);
    clock->addWidget(m_startStop);
    column->addLayout(clock);
    m_task->setKnownOnly(true);
    m_form->addEditor(kTask, tr("Task"), m_task);
    m_form->addLine(kDay, tr("Day"), kHalf);
    m_form->addLine(kTime, tr("How long"), kHalf);
    m_form->addLine(kNote, tr("What was done"));
    m_form->addLine(kHands, tr("Pairs of hands"), kHalf);
    m_form->setHint(kDay, tr("today if left empty"));
    m_form->setHint(kTime, tr("e.g. 2.5 h, 45 min"));
    m_form->setHint(kHands, tr("1 if left empty"));
    m_form->setSave([this] { return enter(); });
    column->addWidget(m_form);
    column->addWidget(m_photos);
    m_days->setSpacing(2);
    column->addLayout(m_days);
    m_photos->button()->hide(); // choosing files is offered where the photos are kept
    m_minute.setInterval(15'000);
    connect(&m_minute, &QTimer::timeout, this, &WorkLogPanel::tick);
    connect(m_startStop, &QPushButton::clicked, this, &WorkLogPanel::startOrStop);
    connect(m_photos, &DropArea::filesCame, this, &WorkLogPanel::keepFiles);
    connect(m_photos, &DropArea::pictureCame, this, &WorkLogPanel::keepPicture);
    connect(m_photos, &DropArea::refused, this,
            [this](const QString &sentence) { emit said(sentence, Tone::Problem); });
    connect(&m_book, &Book::changed, this, &WorkLogPanel::refresh);
    refresh();
}

QDateTime WorkLogPanel::now() const
{
    return m_book.clock().nowUtc().toLocalTime();
}

void WorkLogPanel::tell(const Outcome &outcome, const QString &sentence)
{
    emit said(outcome ? sentence : outcome.error().sentence, outcome ? Tone::Told : Tone::Problem);
}

std::optional<Id<Task>> WorkLogPanel::pickedTask() const
{
    const Task *task = m_book.records().byKey<Task>(m_task->keyNow());
    return task ? std::optional(task->id) : std::nullopt;
}

void WorkLogPanel::startOrStop()
{
    if (workUnderWay(m_book.records())) {
        tell(stopWork(m_book, now(), m_form->text(kNote)), tr("Stopped, and written down."));
        m_form->setText(kNote, {});
        return;
    }
    if (!m_task->name().isEmpty() && !pickedTask()) {
        m_form->showProblem(
            {ProblemCode::BadInput, tr("There is no task “%1”.").arg(m_task->name()), {}, kTask});
        return;
    }
    const Result<Id<WorkEntry>> begun = startWork(m_book, pickedTask(), now());
    tell(begun ? Outcome() : Outcome(fail(begun.error())), tr("The clock runs."));
}

Outcome WorkLogPanel::enter()
{
    WorkEntry entry;
    entry.task = pickedTask();
    if (!m_task->name().isEmpty() && !entry.task)
        return fail(ProblemCode::BadInput, tr("There is no task “%1”.").arg(m_task->name()), {},
                    kTask);
    const auto day = m_form->date(kDay, m_book.clock().today());
    if (!day)
        return fail(day.error());
    entry.on = day->value_or(m_book.clock().today());
    const Result<int> minutes = readWorkMinutes(m_form->text(kTime));
    if (!minutes)
        return fail(minutes.error().code, minutes.error().sentence, minutes.error().whatToDo,
                    kTime);
    entry.minutes = *minutes;
    if (const QString typed = m_form->text(kHands); !typed.isEmpty())
        entry.hands = typed.toInt(); // what is no number is 0, and refused by the record's rule
    entry.note = m_form->text(kNote);
    const Result<Id<WorkEntry>> made = logWork(m_book, entry);
    if (!made)
        return fail(made.error());
    for (const QString &field : {kDay, kTime, kNote, kHands})
        m_form->setText(field, {});
    m_form->forgetTouched();
    emit said(tr("%1 logged.").arg(showWorkTime(*entry.minutes)), Tone::Told);
    return {};
}

Attachment WorkLogPanel::belonging() const
{
    Attachment like;
    const WorkEntry *running = workUnderWay(m_book.records());
    like.task = pickedTask();
    if (!like.task && running)
        like.task = running->task;
    like.takenOn = m_book.clock().today();
    return like;
}

void WorkLogPanel::keepFiles(const QStringList &paths)
{
    const Result<std::vector<NewFile>> files = readFiles(paths);
    if (!files) {
        emit said(files.error().sentence, Tone::Problem);
        return;
    }
    tell(addFiles(m_book, *files, belonging()), tr("%1 kept with today's work.").arg(paths.size()));
}

void WorkLogPanel::keepPicture(const QImage &picture)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    picture.save(&buffer, "PNG");
    NewFile file{bytes, QStringLiteral("work-%1.png").arg(printDate(m_book.clock().today())),
                 QStringLiteral("image/png")};
    tell(addFiles(m_book, {file}, belonging()), tr("The picture is kept with today's work."));
}

void WorkLogPanel::tick()
{
    const WorkEntry *running = workUnderWay(m_book.records());
    if (!running) {
        m_underWay->setText(tr("The clock is not running."));
        m_startStop->setText(tr("&Start the clock"));
        return;
    }
    const Task *task = m_book.records().find(running->task);
    const int minutes = minutesSince(*running, now());
    m_underWay->setText(tr("%1, under way since %2: %3")
                            .arg(task ? task->title : tr("Work on the build"), running->started,
                                 minutes == 0 ? tr("just begun") : showWorkTime(minutes)));
    m_startStop->setText(tr("&Stop the clock"));
}

void WorkLogPanel::refresh()
{
    const Records &records = m_book.records();
    const bool running = workUnderWay(records) != nullptr;
    if (running)
        m_minute.start();
    else
        m_minute.stop();
    std::vector<KnownName> known;
    for (const Task &task : records.all<Task>())
        if (!task.milestone && task.state == TaskState::Started)
            known.push_back({task.key, task.title, tr("under way")});
    for (const Task &task : records.all<Task>())
        if (!task.milestone && task.state == TaskState::Open)
            known.push_back({task.key, task.title, task.area});
    m_task->setKnown(std::move(known));
    tick();
    showDays();
}

void WorkLogPanel::showDays()
{
    while (QLayoutItem *item = m_days->takeAt(0)) {
        if (item->widget())
            item->widget()->deleteLater();
        delete item;
    }
    const Records &records = m_book.records();
    std::vector<const WorkEntry *> entries;
    for (const WorkEntry &entry : records.all<WorkEntry>())
        if (entry.minutes)
            entries.push_back(&entry);
    std::stable_sort(entries.begin(), entries.end(),
                     [](auto *a, auto *b) { return a->on > b->on; });
    for (std::size_t i = 0; i < std::min(entries.size(), kEntriesShown); ++i) {
        const WorkEntry &entry = *entries[i];
        const Task *task = records.find(entry.task);
        const auto photos =
            std::count_if(records.all<Attachment>().begin(), records.all<Attachment>().end(),
                          [&](const Attachment &a) {
                              return a.kind == AttachmentKind::Photo && a.takenOn == entry.on &&
                                     (!entry.task || a.task == entry.task);
                          });
        QStringList detail;
        if (!entry.note.isEmpty())
            detail << entry.note;
        if (photos > 0)
            detail << (photos == 1 ? tr("1 photo") : tr("%1 photos").arg(photos));
        const QString hours =
            entry.hands > 1
                ? tr("%1, %2 pairs of hands").arg(showWorkTime(*entry.minutes)).arg(entry.hands)
                : showWorkTime(*entry.minutes);
        auto *row = new BenchRowButton(
            m_theme,
            {showDate(entry.on), tr("%1: %2").arg(task ? task->title : tr("The build"), hours),
             detail.join(tr("; ")), task && task->highVoltage});
        if (task)
            connect(row, &QPushButton::clicked, this,
                    [this, key = task->key] { emit taskWanted(key); });
        m_days->addWidget(row);
    }
}

} // namespace ohmwright::ui
