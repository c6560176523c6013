// SPDX-License-Identifier: GPL-3.0-or-later
// Fit out of a book: bays, and the parts that sit in them.
#include "core/checks/fit.h"
#include "core/parts/assembly.h"
#include "core/verdicts/build_parts.h"
#include "core/verdicts/vehicle_checks_of_book.h"
#include "core/verdicts/vehicle_tools.h"

#include <QCoreApplication>

namespace ohmwright {

// Which of its own directions may stand upright in the bay.
enum class Upright { Height, HeightOrWidth, HeightOrLength, Any };
template <>
struct EnumWords<Upright>
{
    static constexpr std::array words{"height", "height or width", "height or length", "any"};
};

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("FitsOfBook", text);
}

Given<Length> extentOf(const BookInputs &in, const Part &part, RatedQuantity along)
{
    return in.rating<Length>(part, FigureName{along, RatingKind::Actual, RatingBasis::Nominal, {}});
}

struct PortFigures
{
    Face face;
    const char *cable;
    const char *connector;
};
constexpr std::array kPorts{
    PortFigures{Face::Front, "fit.cable_front", "fit.connector_front"},
    PortFigures{Face::Back, "fit.cable_back", "fit.connector_back"},
    PortFigures{Face::Left, "fit.cable_left", "fit.connector_left"},
    PortFigures{Face::Right, "fit.cable_right", "fit.connector_right"},
    PortFigures{Face::Bottom, "fit.cable_bottom", "fit.connector_bottom"},
    PortFigures{Face::Top, "fit.cable_top", "fit.connector_top"},
};

std::vector<BoxPort> portsOf(const BookInputs &in, const Part &part)
{
    std::vector<BoxPort> ports;
    for (const PortFigures &figures : kPorts) {
        if (!in.has(figures.cable, part) && !in.has(figures.connector, part))
            continue;
        BoxPort port;
        port.name = tr("cable");
        port.face = figures.face;
        port.cableDiameter = in.figure<Length>(figures.cable, part);
        port.connector = in.figure<Length>(figures.connector, part);
        port.bendFactor = figureIfAny<double>(in, "fit.bend_factor", part);
        ports.push_back(port);
    }
    return ports;
}

// Lying as drawn is always allowed; another way only if its maker says so.
Upright uprightOf(const BookInputs &in, const Part &part)
{
    return in.choice<Upright>("fit.upright", part).value.value_or(Upright::Height);
}

BayBox boxOf(const BookInputs &in, const Part &part)
{
    BayBox box;
    box.name = part.name;
    box.length = extentOf(in, part, RatedQuantity::Length);
    box.width = extentOf(in, part, RatedQuantity::Width);
    box.height = extentOf(in, part, RatedQuantity::Height);
    box.ports = portsOf(in, part);
    const Upright upright = uprightOf(in, part);
    box.widthUp = upright == Upright::HeightOrWidth || upright == Upright::Any;
    box.lengthUp = upright == Upright::HeightOrLength || upright == Upright::Any;
    return box;
}

Check judgeBay(const BookInputs &in, const AssemblyTree &tree, const Part &bay)
{
    FitInputs fit;
    fit.bay = bay.key;
    fit.bayLength = extentOf(in, bay, RatedQuantity::Length);
    fit.bayWidth = extentOf(in, bay, RatedQuantity::Width);
    fit.bayHeight = extentOf(in, bay, RatedQuantity::Height);
    std::vector<const Part *> boxes;
    for (const Id<Part> id : tree.within(bay.id))
        if (const Part *part = in.records().find(id); part && isOfTheBuild(in.records(), *part))
            boxes.push_back(part);
    for (const Part *box : boxes)
        fit.boxes.push_back(boxOf(in, *box));
    in.hold(fit.clearance);
    Check check = about(judgeFit(fit), bay.key, tr("Fit in %1").arg(bay.name));
    for (const Part *box : boxes)
        tellChoice(check, in, wordOf(uprightOf(in, *box)), tr("as drawn"), "fit.upright", *box);
    return check;
}

} // namespace

std::vector<Check> judgeFitsOfBook(const BookInputs &in)
{
    std::vector<Check> checks;
    const std::vector<const Part *> bays = partsOfRole(in.records(), PartRole::Bay);
    if (bays.empty())
        return checks;
    const AssemblyTree tree(in.records());
    for (const Part *bay : bays)
        checks.push_back(judgeBay(in, tree, *bay));
    return checks;
}

} // namespace ohmwright
