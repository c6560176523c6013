// SPDX-License-Identifier: GPL-3.0-or-later
// The Checks page's source over a real book.
#pragma once

#include "core/verdicts/judge_book.h"
#include "ui/checks/checks_source.h"

#include <QObject>

namespace ohmwright::ui {

class BookChecksSource : public QObject, public ChecksSource
{
    Q_OBJECT

public:
    explicit BookChecksSource(Book &book, QObject *parent = nullptr);

    [[nodiscard]] std::vector<Check> checks() override;
    [[nodiscard]] QString subjectName(const Check &check) const override;
    Outcome edit(const QString &field, const QString &typed) override;
    Outcome findOut(const Check &check, const QString &unknownName) override;
    [[nodiscard]] bool isBeingFoundOut(const Check &check,
                                       const QString &unknownName) const override;
    [[nodiscard]] std::optional<TurningSearch> turning(const Check &check) override;
    [[nodiscard]] std::unique_ptr<Scratch> scratch() override;

private:
    Book &m_book;
    BookJudge m_judge;
};

} // namespace ohmwright::ui
