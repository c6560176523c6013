// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/checks_questions.h"

#include "core/verdicts/asked_by_checks.h"
#include "core/verdicts/judge_book.h"

#include <QMetaObject>

#include <utility>

namespace ohmwright::ui {

namespace {

constexpr int kAfterAnEdit = 300; // ms of quiet before it starts
constexpr std::chrono::milliseconds kCopyAtOnce{4};

} // namespace

ChecksQuestions::ChecksQuestions(Book &book, QObject *parent) : QObject(parent), m_book(book)
{
    m_soon.setSingleShot(true);
    m_soon.setInterval(kAfterAnEdit);
    connect(&m_soon, &QTimer::timeout, this, [this] {
        m_copy = std::make_shared<RecordsCopy>();
        m_copying.start();
    });
    connect(&m_copying, &QTimer::timeout, this, &ChecksQuestions::copyOn);
    connect(&book, &Book::changed, this, [this] {
        m_copying.stop();
        m_copy.reset();
        m_beside.giveUp();
        ++m_run; // what it may still deliver is of an earlier book
        m_soon.start();
    });
    m_soon.start();
}

void ChecksQuestions::copyOn()
{
    if (!m_copy->step(m_book.records(), kCopyAtOnce))
        return;
    m_copying.stop();
    m_beside.start([this, run = m_run, copy = std::exchange(m_copy, nullptr),
                    today = m_book.clock().today()](const forecast::Watch &) {
        const std::shared_ptr<const Records> records = copy->take();
        std::vector<Question> asked = askedByChecks(*records, judgeBook(*records, today));
        QMetaObject::invokeMethod(
            this, [this, run, asked = std::move(asked)] { take(asked, run); },
            Qt::QueuedConnection);
    });
}

void ChecksQuestions::take(std::vector<Question> questions, int run)
{
    if (run != m_run || questions == m_latest)
        return;
    m_latest = std::move(questions);
    emit updated();
}

} // namespace ohmwright::ui
