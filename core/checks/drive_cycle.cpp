// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/drive_cycle.h"

#include "core/quantity/invariant.h"

#include <QCoreApplication>
#include <QFile>
#include <QIODevice>
#include <QList>

#include "resources/resources.h"
#include <algorithm>
#include <cmath>
#include <optional>

namespace ohmwright {

namespace {

constexpr double kKmh = 1 / 3.6;
constexpr double kMph = 0.44704;
constexpr double kMostSpeed = 500 * kKmh;

QString tr(const char *text)
{
    return QCoreApplication::translate("DriveCycle", text);
}

tl::unexpected<Problem> bad(const QString &sentence, const QString &where = {})
{
    Problem problem;
    problem.code = ProblemCode::BadInput;
    problem.sentence = sentence;
    problem.whatToDo = tr("Give a table with the columns time_s and speed_kmh, a row a point.");
    problem.where = where;
    return tl::unexpected(problem);
}

QByteArray resource(const char *file)
{
    QFile stored(QStringLiteral(":/ohmwright/drive-cycles/") + QString::fromLatin1(file));
    require(stored.open(QIODevice::ReadOnly), "the drive cycles are compiled in and registered");
    return stored.readAll();
}

DriveCycle known(const char *file, const char *key, const char *name, const char *source,
                 const QString &part = {})
{
    Result<DriveCycle> cycle = readDriveCycle(resource(file), part);
    require(cycle.has_value(), "the compiled-in drive cycles are well formed");
    cycle->key = QString::fromLatin1(key);
    cycle->name = QString::fromLatin1(name);
    cycle->source = QString::fromLatin1(source);
    return *cycle;
}

// Cycles end and begin at rest, so the shared instant is left out once.
void append(DriveCycle &cycle, const DriveCycle &next)
{
    const Duration offset = cycle.points.empty() ? Duration() : cycle.points.back().first;
    for (const auto &[time, speed] : next.points) {
        if (cycle.points.empty() || time.si() > 0)
            cycle.points.emplace_back(offset + time, speed);
    }
}

std::vector<DriveCycle> readAll()
{
    registerResources();
    const DriveCycle udds = known("udds.csv", "udds", "UDDS", "40 CFR Part 86, Appendix I(a)");
    DriveCycle ftp = udds;
    ftp.key = QStringLiteral("ftp-75");
    ftp.name = QStringLiteral("FTP-75");
    constexpr double kHotStart = 505;
    append(ftp, udds.part(seconds(0), seconds(kHotStart)));

    DriveCycle nedc;
    nedc.key = QStringLiteral("nedc");
    nedc.name = QStringLiteral("NEDC");
    nedc.source = QStringLiteral("UN R83, annex 4a");
    const DriveCycle urban = known("nedc_breakpoints.csv", "", "", "", QStringLiteral("ece15"));
    constexpr int kUrbanParts = 4;
    for (int i = 0; i < kUrbanParts; ++i)
        append(nedc, urban);
    append(nedc, known("nedc_breakpoints.csv", "", "", "", QStringLiteral("eudc")));

    return {udds, ftp, known("hwfet.csv", "hwfet", "HWFET", "40 CFR Part 600, Appendix I"),
            known("wltc_class3b.csv", "wltc-3b", "WLTC class 3b", "UN R154, annex B1"), nedc};
}

} // namespace

Duration DriveCycle::duration() const
{
    return points.empty() ? Duration() : points.back().first - points.front().first;
}

Length DriveCycle::distance() const
{
    Length sum;
    for (std::size_t i = 1; i < points.size(); ++i)
        sum +=
            (points[i].second + points[i - 1].second) / 2 * (points[i].first - points[i - 1].first);
    return sum;
}

Speed DriveCycle::highest() const
{
    Speed most;
    for (const auto &point : points)
        most = std::max(most, point.second);
    return most;
}

DriveCycle DriveCycle::part(Duration from, Duration to) const
{
    DriveCycle some = *this;
    std::erase_if(some.points,
                  [&](const auto &point) { return point.first < from || to < point.first; });
    return some;
}

DriveCycle DriveCycle::cappedAt(Speed speed) const
{
    DriveCycle capped = *this;
    for (auto &point : capped.points)
        point.second = std::min(point.second, speed);
    return capped;
}

Result<DriveCycle> readDriveCycle(const QByteArray &csv, const QString &part)
{
    const QList<QByteArray> lines = csv.split('\n');
    const QList<QByteArray> header = lines.front().trimmed().split(',');
    const auto column = [&](const char *name) {
        return header.indexOf(QByteArray(name));
    };
    const auto time = column("time_s");
    auto speed = column("speed_kmh");
    double toSi = kKmh;
    if (speed < 0) {
        speed = column("speed_mph");
        toSi = kMph;
    }
    if (speed < 0) {
        speed = column("speed_ms");
        toSi = 1;
    }
    const auto parts = column("part");
    if (time < 0 || speed < 0 || (!part.isEmpty() && parts < 0))
        return bad(tr("The first line of a drive cycle names its columns."));

    DriveCycle cycle;
    for (qsizetype i = 1; i < lines.size(); ++i) {
        const QByteArray line = lines[i].trimmed();
        if (line.isEmpty())
            continue;
        const QString where = tr("line %1").arg(i + 1);
        const QList<QByteArray> cells = line.split(',');
        if (cells.size() != header.size())
            return bad(tr("There are too few or too many columns in line %1.").arg(i + 1), where);
        if (!part.isEmpty() && QString::fromUtf8(cells[parts]) != part)
            continue;
        bool timeRead = false, speedRead = false; // QByteArray reads the C locale only
        const double t = cells[time].toDouble(&timeRead);
        const double v = cells[speed].toDouble(&speedRead) * toSi;
        if (!timeRead || !speedRead || !std::isfinite(t) || !std::isfinite(v))
            return bad(tr("There is no number in line %1.").arg(i + 1), where);
        if (v < 0 || v > kMostSpeed)
            return bad(tr("The speed in line %1 is not one of a road vehicle.").arg(i + 1), where);
        if (!cycle.points.empty() && t <= cycle.points.back().first.si())
            return bad(tr("The time in line %1 does not rise.").arg(i + 1), where);
        cycle.points.emplace_back(seconds(t), Speed::fromSi(v));
    }
    if (cycle.points.size() < 2)
        return bad(tr("A drive cycle has two points or more."));
    return cycle;
}

const std::vector<DriveCycle> &publishedDriveCycles()
{
    static const std::vector<DriveCycle> kCycles = readAll();
    return kCycles;
}

const DriveCycle &publishedDriveCycle(const QString &key)
{
    for (const DriveCycle &cycle : publishedDriveCycles()) {
        if (cycle.key == key)
            return cycle;
    }
    brokenInvariant("a published drive cycle is one of the list");
}

} // namespace ohmwright
