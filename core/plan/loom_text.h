// SPDX-License-Identifier: GPL-3.0-or-later
// Inside of loom.h: words, and how they are broken to a width.
#pragma once

#include "core/plan/loom.h"

#include <QHash>
#include <QString>
#include <QStringList>

namespace ohmwright::plan::loom {

// Widths of one kind of text; every word is measured once.
class Words
{
public:
    Words(const LoomMetrics &metrics, LoomText kind);

    // A line is its words and the spaces between them.
    double width(const QString &line);

    struct Broken
    {
        QStringList lines;
        double width = 0; // of the longest
        bool cut = false; // the last line ends in "…"
    };
    // Filled line by line up to `most` lines; what is left over is elided.
    Broken broken(const QString &text, double width, int most);
    // On one line as wide as it is: for what must never be cut, such as a date.
    Broken uncut(const QString &text);
    // The narrowest `width` that holds `text` in `most` lines (1 or 2) uncut.
    double narrowest(const QString &text, int most);

private:
    QString elided(const QString &text, double width);

    double measured(const QString &text);

    const LoomMetrics &m_metrics;
    LoomText m_kind;
    QHash<QString, double> m_known;
};

// "part: coupling blank +2", "? flow the heater needs"; then why, if anything is known.
struct Missing
{
    bool any = false;
    bool question = false;
    bool aside = false;   // not a need: the task is set aside
    std::size_t need = 0; // index of the unmet one that takes longest to meet, the first of equals
    QString what, why;
};
Missing missing(const Task &task);

} // namespace ohmwright::plan::loom
