// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/fit.h"

#include "core/checks/cable_bend.h"
#include "core/checks/taken.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

const QString kTimes = QStringLiteral(" × ");

QString tr(const char *text)
{
    return QCoreApplication::translate("Fit", text);
}

QString shown(const Extent &extent)
{
    return showSi(extent[0], u"mm") + kTimes + showSi(extent[1], u"mm") + kTimes +
           showSi(extent[2], u"mm");
}

QString axisName(std::size_t axis)
{
    return axis == 0 ? tr("length") : axis == 1 ? tr("width") : tr("height");
}

// The box with the room of its cables, lying on its bottom; none if something is not known.
std::optional<Extent> takeBox(Worksheet &sheet, const BayBox &box)
{
    const auto length = taken(sheet, box.length, u"l", u"mm", kAboveNothing);
    const auto width = taken(sheet, box.width, u"b", u"mm", kAboveNothing);
    const auto height = taken(sheet, box.height, u"h", u"mm", kAboveNothing);
    std::array<double, 6> room{};
    bool known = length && width && height;
    for (const BoxPort &port : box.ports) {
        const auto diameter = taken(sheet, port.cableDiameter, u"d", u"mm", 0);
        const auto connector = taken(sheet, port.connector, u"s", u"mm", 0);
        std::optional<double> factor = diameter ? leastBendFactor(*diameter) : 0;
        if (port.bendFactor)
            factor = taken(sheet, *port.bendFactor, u"k", u"", 1, 50);
        if (!diameter || !connector || !factor) {
            known = false;
            continue;
        }
        const Length needed =
            diameter->si() > 0 ? roomForBend(*connector, *diameter, *factor) : *connector;
        sheet.step(tr("%1: room at %2, %3").arg(box.name, port.name, wordOf(port.face)),
                   QStringLiteral("s + k·d + d"),
                   QString(show(*connector, u"mm") + QStringLiteral(" + ") + show(*factor, u"") +
                           QStringLiteral(" · ") + show(*diameter, u"mm") + QStringLiteral(" + ") +
                           show(*diameter, u"mm")),
                   needed, u"mm");
        double &most = room[static_cast<std::size_t>(port.face)];
        most = std::max(most, needed.si());
    }
    if (!box.heightUp && !box.lengthUp && !box.widthUp) {
        sheet.refuse(tr("%1 may not lie in any way.").arg(box.name));
        return std::nullopt;
    }
    if (!known)
        return std::nullopt;
    const Extent extent{length->si() + room[0] + room[1], width->si() + room[2] + room[3],
                        height->si() + room[4] + room[5]};
    sheet.stepText(tr("%1 with the room of its cables").arg(box.name), QStringLiteral("l × b × h"),
                   QString(show(*length, u"mm") + kTimes + show(*width, u"mm") + kTimes +
                           show(*height, u"mm")),
                   shown(extent));
    return extent;
}

void compareRow(Worksheet &sheet, const QString &who, const RowOfBoxes &row, const Extent &bay,
                const FitInputs &in)
{
    sheet.stepText(row.ways.size() < 2
                       ? tr("%1, as it lies best").arg(who)
                       : tr("%1, in a row along the bay's %2").arg(who, axisName(row.axis)),
                   QStringLiteral("c = (L − l)/2, along a row (L − Σl)/(n + 1)"),
                   tr("%1 in %2").arg(shown(row.taken), shown(bay)), showSi(row.clearance, u"mm"));
    sheet.within(tr("clearance left for %1").arg(who), metres(row.clearance), in.clearance, u"mm");
}

QString namesOf(const FitInputs &in, const std::vector<std::size_t> &which)
{
    QStringList names;
    for (const std::size_t i : which)
        names.append(in.boxes[i].name);
    return names.join(tr(" and "));
}

} // namespace

std::vector<Extent> waysToLie(const Extent &box, bool heightUp, bool lengthUp, bool widthUp)
{
    std::vector<Extent> ways;
    const auto add = [&ways](double one, double other, double up) {
        ways.push_back({one, other, up});
        if (one != other)
            ways.push_back({other, one, up});
    };
    if (heightUp)
        add(box[0], box[1], box[2]);
    if (widthUp)
        add(box[0], box[2], box[1]);
    if (lengthUp)
        add(box[1], box[2], box[0]);
    return ways;
}

RowOfBoxes bestRow(const std::vector<std::vector<Extent>> &ways, const Extent &bay)
{
    RowOfBoxes best;
    best.clearance = -kNoLimit;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        const auto across = [axis, &bay](const Extent &way) {
            double left = kNoLimit;
            for (std::size_t other = 0; other < 3; ++other) {
                if (other != axis)
                    left = std::min(left, (bay[other] - way[other]) / 2);
            }
            return left;
        };
        // What is left across the row is decided by one way of one box: for each of these, the
        // row is shortest when every box takes its shortest way that leaves as much.
        std::vector<double> bounds;
        for (const auto &box : ways) {
            for (const Extent &way : box)
                bounds.push_back(across(way));
        }
        for (const double bound : bounds) {
            RowOfBoxes row;
            row.axis = axis;
            row.clearance = kNoLimit;
            for (const auto &box : ways) {
                const Extent *shortest = nullptr;
                for (const Extent &way : box) {
                    if (across(way) >= bound &&
                        (shortest == nullptr || way[axis] < (*shortest)[axis]))
                        shortest = &way;
                }
                if (shortest == nullptr)
                    break;
                row.ways.push_back(*shortest);
                row.clearance = std::min(row.clearance, across(*shortest));
                for (std::size_t other = 0; other < 3; ++other)
                    row.taken[other] = other == axis
                                           ? row.taken[other] + (*shortest)[other]
                                           : std::max(row.taken[other], (*shortest)[other]);
            }
            if (row.ways.size() < ways.size())
                continue;
            row.clearance = std::min(row.clearance, (bay[axis] - row.taken[axis]) /
                                                        static_cast<double>(ways.size() + 1));
            if (row.clearance > best.clearance)
                best = row;
        }
    }
    return best;
}

Check judgeFit(const FitInputs &in)
{
    Worksheet sheet(QStringLiteral("fit"), tr("Fit in the bay"), Protects::Chassis);
    sheet.about(in.bay);
    sheet.afterwards(tr("Then try it with a box of cardboard and a length of the real cable before "
                        "anything is cut."));
    const QString source = tr("Geometry; IEC 62440 for the bending radius of cables");
    const auto length = taken(sheet, in.bayLength, u"L", u"mm", kAboveNothing);
    const auto width = taken(sheet, in.bayWidth, u"B", u"mm", kAboveNothing);
    const auto height = taken(sheet, in.bayHeight, u"H", u"mm", kAboveNothing);
    if (in.boxes.empty())
        sheet.doubt(tr("Nothing is told that is to go into this bay."));
    std::vector<std::size_t> known;
    std::vector<std::vector<Extent>> ways;
    for (std::size_t i = 0; i < in.boxes.size(); ++i) {
        const BayBox &box = in.boxes[i];
        if (const auto extent = takeBox(sheet, box)) {
            known.push_back(i);
            ways.push_back(waysToLie(*extent, box.heightUp, box.lengthUp, box.widthUp));
        }
    }
    sheet.turnedBy(tr("Another way for it to lie, if its maker allows it; angled connectors; a "
                      "thinner or more flexible cable; another bay."));
    if (!length || !width || !height)
        return sheet.finish(source);

    const Extent bay{length->si(), width->si(), height->si()};
    const double clear = in.clearance.inForce().si();
    bool allFit = true;
    for (std::size_t i = 0; i < known.size(); ++i) {
        const RowOfBoxes alone = bestRow({ways[i]}, bay);
        allFit = allFit && alone.clearance >= clear;
        if (known.size() == 1 || alone.clearance < clear)
            compareRow(sheet, in.boxes[known[i]].name, alone, bay, in);
        if (known.size() == 1)
            sheet.result(tr("%1 takes %2 of %3 with its cables, %4 are left all round")
                             .arg(in.boxes[known[i]].name, shown(alone.taken), shown(bay),
                                  showSi(alone.clearance, u"mm")));
    }
    if (!allFit || known.size() < 2)
        return sheet.finish(source);

    // two that cannot lie together cannot with others either
    bool pairsFit = true;
    for (std::size_t a = 0; a < known.size() && known.size() > 2; ++a) {
        for (std::size_t b = a + 1; b < known.size(); ++b) {
            const RowOfBoxes pair = bestRow({ways[a], ways[b]}, bay);
            if (pair.clearance < clear) {
                compareRow(sheet, namesOf(in, {known[a], known[b]}), pair, bay, in);
                pairsFit = false;
            }
        }
    }
    const RowOfBoxes row = bestRow(ways, bay);
    const QString names = namesOf(in, known);
    if (known.size() == 2 || row.clearance >= clear) {
        compareRow(sheet, names, row, bay, in);
        sheet.result(tr("%1 in a row along the bay's %2 take %3 of %4, %5 are left between and "
                        "around")
                         .arg(names, axisName(row.axis), shown(row.taken), shown(bay),
                              showSi(row.clearance, u"mm")));
    } else if (pairsFit) {
        sheet.doubt(tr("They do not fit in one row; whether they fit otherwise is for cardboard to "
                       "show."));
    }
    return sheet.finish(source);
}

} // namespace ohmwright
