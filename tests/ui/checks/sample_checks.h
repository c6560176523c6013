// SPDX-License-Identifier: GPL-3.0-or-later
// Checks of an invented van, judged as a book's would be, and a source of them for the page.
#pragma once

#include "ui/checks/checks_source.h"

#include <QMap>
#include <QSet>

#include <functional>

namespace ohmwright::samples {

// The figures that can be edited, by field, as typed; empty: not known.
using Figures = QMap<QString, QString>;

Figures vanFigures();
std::vector<Check> vanChecks(const Figures &figures);
// `count` of them, made up, of all verdicts and groups.
std::vector<Check> manyChecks(int count);

class SampleSource : public ui::ChecksSource
{
public:
    explicit SampleSource(Figures of = vanFigures()) : figures(std::move(of)) {}

    std::vector<Check> checks() override;
    QString subjectName(const Check &check) const override;
    Outcome edit(const QString &field, const QString &typed) override;
    Outcome findOut(const Check &check, const QString &unknownName) override;
    bool isBeingFoundOut(const Check &check, const QString &unknownName) const override;
    std::optional<TurningSearch> turning(const Check & /*check*/) override { return std::nullopt; }
    std::unique_ptr<ui::Scratch> scratch() override;

    Figures figures;
    QStringList edits; // "field=typed", in order
    QSet<QString> beingFoundOut;
    QStringList foundOut;
    int keeps = 0;
    bool refuses = false; // whatever comes
    // In place of the van's.
    std::function<std::vector<Check>()> others;
};

} // namespace ohmwright::samples
