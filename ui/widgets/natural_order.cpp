// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/natural_order.h"

namespace ohmwright::ui {

QString naturalKey(const QString &text)
{
    constexpr qsizetype kDigits = 12; // longer numbers are serial numbers, and stand as they are
    const QString folded = text.toCaseFolded();
    QString key;
    key.reserve(folded.size() + kDigits);
    for (qsizetype i = 0; i < folded.size(); ++i) {
        if (!folded.at(i).isDigit()) {
            key += folded.at(i);
            continue;
        }
        qsizetype end = i;
        while (end < folded.size() && folded.at(end).isDigit())
            ++end;
        key += QStringView(folded).mid(i, end - i).toString().rightJustified(kDigits, u'0');
        i = end - 1;
    }
    return key;
}

} // namespace ohmwright::ui
