// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/most_cells.h"

#include "core/parts/assembly.h"
#include "core/parts/life.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/pack_facts.h"
#include "core/verdicts/wiring.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("MostCells", text);
}

constexpr FigureName kVoltageLimit{RatedQuantity::Voltage, RatingKind::Limit,
                                   RatingBasis::Continuous, CurrentKind::Dc};
constexpr FigureName kCellsLimit{RatedQuantity::CellsInSeries, RatingKind::Limit,
                                 RatingBasis::Continuous, std::nullopt};

std::vector<VoltageLimit> asLimits(const Figure &figure)
{
    if (!figure.value())
        return {};
    return {{given(Voltage::fromSi(figure.value()->si()), describe(figure.name),
                   figure.inForce->evidence, figure.inForce->source),
             CurrentKind::Dc}};
}

class Reader
{
public:
    explicit Reader(const BookInputs &in)
        : m_in(in), m_wiring(wiringOf(in)), m_pack(packFacts(in)), m_tree(in.records())
    {}

    [[nodiscard]] ComparedCell read(ComparedId id)
    {
        const Records &records = m_in.records();
        CircuitRatingsInputs inputs;
        Figure cells;
        if (const auto *type = std::get_if<Id<PartType>>(&id)) {
            const PartType &it = *records.find(*type);
            inputs.parts = {{it.name, asLimits(figureFor(records, it, kVoltageLimit)), true, {}}};
            cells = figureFor(records, it, kCellsLimit);
        } else {
            const Part &part = *records.find(std::get<Id<Part>>(id));
            inputs.parts = {assemblyOf(part)};
            cells = figureFor(records, part, kCellsLimit);
        }
        isAsked = isAsked || cells.value() || !inputs.parts.front().limits.empty();
        inputs.pack.cellFull =
            m_pack.modules.empty()
                ? notKnown<Voltage>(tr("full voltage of a cell"))
                : m_in.figure<Voltage>("cell.full_voltage", *m_pack.modules.front());
        return cellFor(mostCellsInSeries(inputs), inputs.pack.cellFull.value, cells);
    }

    bool isAsked = false; // whether any unit says what the question is about

private:
    // deeper than any vehicle; a loop of assemblies is refused elsewhere and here only must end
    static constexpr int kDeepest = 32;

    [[nodiscard]] Assembly<VoltageLimit> assemblyOf(const Part &part, bool elsewhere = false,
                                                    int depth = 0) const
    {
        Assembly<VoltageLimit> made;
        made.name = part.name;
        made.limits = asLimits(figureFor(m_in.records(), part, kVoltageLimit));
        if (depth == kDeepest)
            return made;
        for (const Id<Part> id : m_tree.within(part.id)) {
            const Part &one = *m_in.records().find(id);
            if (isGone(one.state))
                continue;
            // what is not connected itself is where it sits
            const bool onPack = m_pack.circuit && m_wiring.isOn(one, *m_pack.circuit);
            const bool away = m_wiring.isConnectedItself(one) ? !onPack : elsewhere;
            Assembly<VoltageLimit> inner = assemblyOf(one, away, depth + 1);
            inner.isLive =
                !away && (!inner.limits.empty() || (onPack && one.kind != PartKind::Hardware));
            made.inside.push_back(std::move(inner));
        }
        return made;
    }

    static ComparedCell cellFor(const MostCells &byVoltage, std::optional<Voltage> full,
                                const Figure &limit)
    {
        const NumberStyle style = NumberStyle::pointDecimal();
        ComparedCell cell;
        QStringList said;
        std::optional<int> most = byVoltage.cells;
        if (most)
            said << tr("%1 at %2 a cell")
                        .arg(
                            showAmount(
                                Amount::fromSi(byVoltage.limit.si(), *Unit::fromSymbol(u"V")),
                                style),
                            showAmount(Amount::fromSi(full->si(), *Unit::fromSymbol(u"V")), style));
        if (limit.value()) {
            // more cells than any pack has are as good as no limit
            const int told = static_cast<int>(std::clamp(limit.value()->si(), 0.0, 1e6));
            if (!most || told < *most) {
                most = told;
                said = QStringList{tr("its own limit in cells")};
            }
        }
        if (most && byVoltage.unknowns.isEmpty() && !byVoltage.decidedBy.isEmpty() &&
            byVoltage.decidedBy.contains(u'›') && most == byVoltage.cells)
            said << byVoltage.decidedBy;
        if (!byVoltage.unknowns.isEmpty())
            said << tr("not known: %1").arg(byVoltage.unknowns.join(tr(", ")));
        if (most)
            cell.value = QString::number(*most);
        cell.from = said.join(tr("; "));
        return cell;
    }

    const BookInputs &m_in;
    const Wiring &m_wiring;
    const PackFacts &m_pack;
    AssemblyTree m_tree;
};

} // namespace

std::optional<ComparedRow> mostCellsRow(const BookInputs &in,
                                        const std::vector<ComparedUnit> &units)
{
    ComparedRow row;
    row.what = tr("most cells in series it allows");
    Reader reader(in);
    for (const ComparedUnit &unit : units)
        row.cells.push_back(reader.read(unit.id));
    if (!reader.isAsked)
        return std::nullopt;
    row.agreement = agreementOf(row.cells);
    return row;
}

} // namespace ohmwright
