// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/check_words.h"

#include "core/checks/margin_words.h"

#include <QCoreApplication>
#include <QRegularExpression>

namespace ohmwright::sections {

using sheet::Mark;
using sheet::MarkKind;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

QString pathSign()
{
    return tr(" › ");
}

} // namespace

MarkKind kindOf(Verdict verdict)
{
    switch (verdict) {
    case Verdict::Holds:
        return MarkKind::Holds;
    case Verdict::Tight:
        return MarkKind::Tight;
    case Verdict::Unknown:
        return MarkKind::Unknown;
    case Verdict::Fails:
        return MarkKind::Fails;
    }
    return MarkKind::Unknown;
}

std::vector<Mark> marksOf(const Check &check)
{
    std::vector<Mark> marks{{kindOf(check.verdict)}};
    if (check.publishedVerdict)
        marks.emplace_back(
            kindOf(*check.publishedVerdict),
            tr("%1 by the published threshold").arg(wordOf(*check.publishedVerdict)));
    return marks;
}

QString marginOf(const Check &check)
{
    return check.margin && check.verdict != Verdict::Unknown ? marginFigure(*check.margin)
                                                             : QString();
}

QString partOf(const QString &path)
{
    const auto at = path.lastIndexOf(pathSign());
    return at < 0 ? path : path.mid(at + pathSign().size());
}

QString placeOf(const QString &path)
{
    const auto at = path.lastIndexOf(pathSign());
    return at < 0 ? QString() : tr("in %1").arg(path.left(at));
}

QString besideName(const QString &name, const QString &path)
{
    return name.contains(partOf(path)) ? placeOf(path) : path;
}

QString listed(const QStringList &names)
{
    static const QRegularExpression kNumbered(QStringLiteral("^(.*\\D)(\\d+)$"));
    QString list;
    QString stem; // of the name before
    for (const QString &name : names) {
        const QRegularExpressionMatch match = kNumbered.match(name);
        const QString own = match.hasMatch() ? match.captured(1) : QString();
        if (list.isEmpty())
            list = name;
        else if (!own.isEmpty() && own == stem)
            list += tr(", %1").arg(match.captured(2));
        else
            list += tr("; %1").arg(name);
        stem = own;
    }
    return list;
}

QString andAlike(const QStringList &names)
{
    return tr("and %1 more alike, to “%2”").arg(names.size() - 1).arg(names.back());
}

} // namespace ohmwright::sections
