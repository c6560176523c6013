// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/plain_text.h"

#include <QChar>

namespace ohmwright::sheet {

namespace {

bool isDigit(QChar c)
{
    return c >= QLatin1Char('0') && c <= QLatin1Char('9');
}

bool isPointOrComma(QChar c)
{
    return c == QLatin1Char('.') || c == QLatin1Char(',');
}

bool isGrouping(QChar c)
{
    return c == QLatin1Char('\'') || c == QChar(0x2019) || c.category() == QChar::Separator_Space;
}

qsizetype digitsFrom(const QString &text, qsizetype at)
{
    qsizetype end = at;
    while (end < text.size() && isDigit(text[end]))
        ++end;
    return end - at;
}

bool carriesNothing(QChar c)
{
    const char16_t unit = c.unicode();
    const bool control =
        (unit < 0x20 && unit != '\t' && unit != '\n') || (unit >= 0x7f && unit <= 0x9f);
    return control || unit >= 0xfffe || (unit >= 0xfdd0 && unit <= 0xfdef);
}

} // namespace

QString cleaned(QStringView text)
{
    QString result;
    result.reserve(text.size());
    for (qsizetype i = 0; i < text.size(); ++i) {
        const QChar c = text[i];
        if (c.isHighSurrogate() && i + 1 < text.size() && text[i + 1].isLowSurrogate()) {
            // the last two of each plane are no characters
            const bool none = (QChar::surrogateToUcs4(c, text[i + 1]) & 0xfffeU) == 0xfffeU;
            if (none)
                result += QChar(QChar::ReplacementCharacter);
            else
                result.append(c).append(text[i + 1]);
            ++i;
        } else if (c == QLatin1Char('\r')) {
            if (i + 1 == text.size() || text[i + 1] != QLatin1Char('\n'))
                result += QLatin1Char('\n');
        } else if (c == QChar(QChar::LineSeparator) || c == QChar(QChar::ParagraphSeparator)) {
            result += QLatin1Char('\n');
        } else if (c.isSurrogate() || carriesNothing(c)) {
            result += QChar(QChar::ReplacementCharacter);
        } else {
            result += c;
        }
    }
    return result;
}

std::optional<DecimalHalves> splitAtDecimal(const QString &text)
{
    if (text.contains(QLatin1Char('\n')))
        return std::nullopt;
    qsizetype at = 0;
    while (at < text.size() && !isDigit(text[at]))
        ++at;
    if (at == text.size())
        return std::nullopt;

    qsizetype lastSign = -1;
    int signsOfTheLastKind = 0;
    at += digitsFrom(text, at);
    while (at + 1 < text.size()) {
        const qsizetype following = digitsFrom(text, at + 1);
        if (isPointOrComma(text[at]) && following > 0) {
            const bool another = lastSign >= 0 && text[at] != text[lastSign];
            signsOfTheLastKind = another ? 1 : signsOfTheLastKind + 1;
            lastSign = at;
        } else if (!isGrouping(text[at]) || following != 3 || lastSign >= 0) {
            break;
        }
        at += 1 + following;
    }
    const bool hasDecimals = lastSign >= 0 && signsOfTheLastKind == 1;
    const qsizetype split = hasDecimals ? lastSign : at;
    return DecimalHalves{text.left(split), text.mid(split)};
}

} // namespace ohmwright::sheet
