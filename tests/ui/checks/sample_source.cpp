// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/checks/sample_checks.h"

namespace ohmwright::samples {

namespace {

const QMap<QString, QString> kNames{
    {QStringLiteral("link.capacitance"), QStringLiteral("capacitance of the link")},
    {QStringLiteral("precharge.resistance"), QStringLiteral("precharge resistor")},
    {QStringLiteral("battery.mass"), QStringLiteral("battery")},
    {QStringLiteral("pack.full"), QStringLiteral("pack at full charge")}};

// What a book would refuse, whatever the amount.
Outcome allowed(const Figures &figures, const QString &field, const QString &typed)
{
    if (!figures.contains(field))
        return fail(ProblemCode::NotFound, QStringLiteral("No such figure."), {}, field);
    const auto amount = parseAmount(typed, NumberStyle::pointDecimal());
    if (!amount)
        return fail(amount.error());
    if (amount->number() <= 0)
        return fail(ProblemCode::BadInput, QStringLiteral("That must be above zero."),
                    QStringLiteral("Type what the part has."), field);
    return {};
}

class SampleScratch : public ui::Scratch
{
public:
    explicit SampleScratch(SampleSource &source) : m_source(source), m_figures(source.figures) {}

    Outcome set(const QString &field, const QString &typed) override
    {
        if (Outcome may = allowed(m_figures, field, typed); !may)
            return may;
        m_figures[field] = typed;
        for (ui::ScratchChange &change : m_changes)
            if (change.field == field) {
                change.after = typed;
                return {};
            }
        m_changes.push_back(
            {field, kNames.value(field, field), m_source.figures.value(field), typed});
        return {};
    }
    std::vector<Check> checks() override { return vanChecks(m_figures); }
    std::vector<ui::ScratchChange> changes() const override { return m_changes; }
    std::optional<TurningSearch> turning(const Check & /*check*/) override { return std::nullopt; }
    Outcome keep() override
    {
        if (m_source.refuses)
            return fail(ProblemCode::Conflict, QStringLiteral("Another window was quicker."));
        m_source.figures = m_figures;
        ++m_source.keeps;
        return {};
    }

private:
    SampleSource &m_source;
    Figures m_figures;
    std::vector<ui::ScratchChange> m_changes;
};

} // namespace

std::vector<Check> SampleSource::checks()
{
    return others ? others() : vanChecks(figures);
}

QString SampleSource::subjectName(const Check &check) const
{
    static const QMap<QString, QString> kSubjects{
        {QStringLiteral("traction"), QStringLiteral("Traction circuit")},
        {QStringLiteral("van"), QStringLiteral("Van")},
        {QStringLiteral("pack"), QStringLiteral("Traction battery")},
        {QStringLiteral("coupler"), QStringLiteral("Motor coupler")}};
    return kSubjects.value(check.subject);
}

Outcome SampleSource::edit(const QString &field, const QString &typed)
{
    if (refuses)
        return fail(ProblemCode::NotAllowed, QStringLiteral("A measurement may not raise a limit."),
                    QStringLiteral("Record it beside the plate."), field);
    if (Outcome may = allowed(figures, field, typed); !may)
        return may;
    figures[field] = typed;
    edits << QString(field + QLatin1Char('=') + typed);
    return {};
}

Outcome SampleSource::findOut(const Check &check, const QString &unknownName)
{
    if (refuses)
        return fail(ProblemCode::ReadOnly, QStringLiteral("The book cannot be written."));
    foundOut << QString(check.id + QLatin1Char(':') + unknownName);
    beingFoundOut.insert(unknownName);
    return {};
}

bool SampleSource::isBeingFoundOut(const Check &, const QString &unknownName) const
{
    return beingFoundOut.contains(unknownName);
}

std::unique_ptr<ui::Scratch> SampleSource::scratch()
{
    return std::make_unique<SampleScratch>(*this);
}

} // namespace ohmwright::samples
