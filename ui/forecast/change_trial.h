// SPDX-License-Identifier: GPL-3.0-or-later
// A question of one's own to the forecast, answered beside the window's thread: what would this
// change bring to each milestone. Asked again by itself when a newer forecast is there.
#pragma once

#include "ui/forecast/beside.h"

#include <QObject>
#include <QStringList>

#include <memory>

namespace ohmwright::ui {

class Forecaster;
struct ForecastTold;

class ChangeTrial : public QObject
{
    Q_OBJECT

public:
    explicit ChangeTrial(Forecaster &forecaster, QObject *parent = nullptr);

    // As after --try (core/forecast/changes.h). A question under way is given up for it.
    void ask(const QString &code);
    // What was meant is no question: says why in place of an answer.
    void refuse(const QString &sentence);
    void cancel();

    [[nodiscard]] bool isWorking() const { return m_working; }
    // What was asked in words, then a sentence for each milestone; empty while there is none.
    [[nodiscard]] const QStringList &answer() const { return m_answer; }
    // Why it cannot be asked; empty when it can.
    [[nodiscard]] const QString &problem() const { return m_problem; }

signals:
    void changed();

private:
    void askAgain();
    void take(const QStringList &answer, int run);

    Forecaster &m_forecaster;
    QString m_code;
    std::weak_ptr<const ForecastTold> m_asked; // the forecast it was asked of
    QStringList m_answer;
    QString m_problem;
    bool m_working = false;
    int m_run = 0;
    Beside m_beside; // last: its end waits for work that uses the others
};

} // namespace ohmwright::ui
