// SPDX-License-Identifier: GPL-3.0-or-later
// Restraint of battery boxes, out of a book.
#include "core/checks/restraint.h"
#include "core/parts/assembly.h"
#include "core/verdicts/build_parts.h"
#include "core/verdicts/vehicle_checks_of_book.h"
#include "core/verdicts/vehicle_tools.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("RestraintsOfBook", text);
}

constexpr FigureName kMass{RatedQuantity::Mass, RatingKind::Actual, RatingBasis::Nominal, {}};

// The masses of a box and of what is in it, added up.
class MassInBox
{
public:
    MassInBox(const BookInputs &in, const AssemblyTree &tree, const Part &box)
        : m_in(in), m_sum(in.rating<Mass>(box, kMass))
    {
        if (!tree.within(box.id).empty()) {
            addWithin(tree, box.id);
        } else if (box.partOf) {
            // the box stands beside its modules, in what the pack is made up of
            addWithin(tree, *box.partOf, &box);
        }
    }

    // Not known while the box or a module is not weighed.
    [[nodiscard]] Given<Mass> asTold(Given<Mass> told) const
    {
        const Given<Mass> &missing = m_missing ? *m_missing : m_sum;
        if (!missing.value)
            return missing;
        told.value = m_sum.value;
        told.origin.evidence = m_notWeighed.isEmpty() ? m_weakest : Evidence::Assumed;
        told.origin.source =
            m_notWeighed.isEmpty()
                ? tr("box and everything in it, by the masses of the parts")
                : tr("box and what is in it, without: %1").arg(m_notWeighed.join(tr(", ")));
        return told;
    }

private:
    // A weighed part has its contents in its mass.
    void addWithin(const AssemblyTree &tree, Id<Part> holder, const Part *except = nullptr)
    {
        std::vector<Id<Part>> left = tree.within(holder);
        const std::size_t most = m_in.records().all<Part>().size();
        for (std::size_t i = 0; i < left.size() && i < most; ++i) {
            const Part *part = m_in.records().find(left[i]);
            if (!part || part == except || !isOfTheBuild(m_in.records(), *part))
                continue;
            const Given<Mass> mass = m_in.rating<Mass>(*part, kMass);
            const std::vector<Id<Part>> &inner = tree.within(part->id);
            if (mass.value)
                add(mass);
            else if (!inner.empty())
                left.insert(left.end(), inner.begin(), inner.end());
            else if (part->kind == PartKind::Module)
                m_missing = m_missing ? m_missing : std::optional(mass);
            else
                m_notWeighed << part->name;
        }
    }

    void add(const Given<Mass> &mass)
    {
        m_weakest = std::max(m_weakest, mass.origin.evidence);
        if (m_sum.value)
            *m_sum.value += *mass.value;
    }

    const BookInputs &m_in;
    Given<Mass> m_sum;
    Evidence m_weakest = m_sum.origin.evidence;
    std::optional<Given<Mass>> m_missing; // of a module
    QStringList m_notWeighed;
};

Check judgeBox(const BookInputs &in, const AssemblyTree &tree, const Part &box)
{
    RestraintInputs restraint;
    restraint.box = box.key;
    restraint.mass = in.figure<Mass>("restraint.mass", box);
    if (!in.has("restraint.mass", box))
        restraint.mass = MassInBox(in, tree, box).asTold(restraint.mass);
    restraint.height = in.figure<Length>("restraint.height", box);
    restraint.bolts = in.figure<double>("restraint.bolts", box);
    restraint.lengthwise = in.figure<Length>("restraint.lengthwise", box);
    restraint.crosswise = in.figure<Length>("restraint.crosswise", box);
    restraint.size = givenChoice<BoltSize>(in, "restraint.bolt_size", box);
    restraint.grade = givenChoice<BoltClass>(in, "restraint.bolt_class", box);
    restraint.sheet = in.figure<Length>("restraint.sheet", box);
    restraint.sheetStrength = in.figure<Pressure>("restraint.sheet_strength", box);
    restraint.spreader = in.figure<Length>("restraint.spreader", box);
    // a lighter category asks more, so the lightest is held to until another is told
    const VehicleClass category =
        in.choice<VehicleClass>("restraint.category").value.value_or(VehicleClass::M1N1);
    restraint.forward = RestraintInputs::ofClass(category, true);
    restraint.sideways = RestraintInputs::ofClass(category, false);
    in.hold(restraint.forward);
    in.hold(restraint.sideways);
    in.hold(restraint.upward);
    Check check = about(judgeRestraint(restraint), box.key, tr("Restraint of %1").arg(box.name));
    tellChoice(check, in, wordOf(category), tr("the strictest"), "restraint.category");
    return check;
}

} // namespace

std::vector<Check> judgeRestraintsOfBook(const BookInputs &in)
{
    std::vector<Check> checks;
    const std::vector<const Part *> boxes = partsOfRole(in.records(), PartRole::BatteryBox);
    if (boxes.empty())
        return checks;
    const AssemblyTree tree(in.records());
    for (const Part *box : boxes)
        checks.push_back(judgeBox(in, tree, *box));
    return checks;
}

} // namespace ohmwright
