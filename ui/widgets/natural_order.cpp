// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/natural_order.h"

namespace ohmwright::ui {

QString naturalKey(const QString &text)
{
    const QString folded = text.toCaseFolded();
    QString key;
    key.reserve(folded.size() + 4);
    for (qsizetype i = 0; i < folded.size(); ++i) {
        if (!folded.at(i).isDigit()) {
            key += folded.at(i);
            continue;
        }
        qsizetype end = i;
        while (end < folded.size() && folded.at(end).isDigit())
            ++end;
        while (i + 1 < end && folded.at(i) == u'0')
            ++i; // "007" counts as 7
        // the longer number is the greater one; of the same length they sort as text
        key += QChar(static_cast<char16_t>(u'0' + end - i));
        key += QStringView(folded).mid(i, end - i);
        i = end - 1;
    }
    return key;
}

} // namespace ohmwright::ui
