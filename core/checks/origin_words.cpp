// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/origin_words.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("OriginWords", text);
}

} // namespace

QString evidenceOf(const Origin &from)
{
    QStringList words{wordOf(from.evidence)};
    if (!from.source.isEmpty())
        words << from.source;
    if (from.stale)
        words << tr("older than the rework");
    if (from.clash)
        words << (from.safest                           ? tr("values clash, the safest is used")
                  : from.evidence == Evidence::Measured ? tr("values differ, the measured is used")
                                                        : tr("values differ, the best founded is "
                                                             "used"));
    return words.join(tr(", "));
}

} // namespace ohmwright
