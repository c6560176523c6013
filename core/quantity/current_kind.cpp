// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/amount.h"

#include <array>

using namespace Qt::StringLiterals;

namespace ohmwright {

namespace {

struct Mark
{
    const char16_t *text = u"";
    CurrentKind kind = CurrentKind::Dc;
    bool sign = false; // needs no word boundary
};

// Longer marks first: "AC rms" before "rms". U+2393 is the direct-current form of two.
constexpr std::array kMarks{
    Mark{u"AC rms", CurrentKind::Ac},  Mark{u"a.c.", CurrentKind::Ac},
    Mark{u"d.c.", CurrentKind::Dc},    Mark{u"AC", CurrentKind::Ac},
    Mark{u"DC", CurrentKind::Dc},      Mark{u"rms", CurrentKind::Ac},
    Mark{u"~", CurrentKind::Ac, true}, Mark{u"∿", CurrentKind::Ac, true},
    Mark{u"⎓", CurrentKind::Dc, true}, Mark{u"=", CurrentKind::Dc, true},
};

// "230 VAC": a mark may follow its unit's letter, a digit or a space, but no other letter, so that
// no word that happens to end in it is cut.
bool mayPrecede(QStringView before)
{
    if (before.isEmpty() || before.back().isSpace() || before.back().isDigit())
        return true;
    const QChar last = before.back().toUpper();
    return last == u'V' || last == u'A' || last == u'W' || last == u'.';
}

std::optional<CurrentKind> cutTrailing(QStringView &text)
{
    for (const Mark &mark : kMarks) {
        const QStringView word(mark.text);
        if (!text.endsWith(word, Qt::CaseInsensitive))
            continue;
        const QStringView before = text.chopped(word.size());
        if (mark.sign || mayPrecede(before)) {
            text = before.trimmed();
            return mark.kind;
        }
    }
    return std::nullopt;
}

std::optional<CurrentKind> cutLeading(QStringView &text)
{
    for (const Mark &mark : kMarks) {
        const QStringView word(mark.text);
        if (mark.sign || !text.startsWith(word, Qt::CaseInsensitive))
            continue; // a leading "~" means about
        const QStringView after = text.mid(word.size());
        if (!after.isEmpty() && after.front().isSpace()) {
            text = after.trimmed();
            return mark.kind;
        }
    }
    return std::nullopt;
}

} // namespace

AmountWithKind splitCurrentKind(QStringView text)
{
    const QStringView whole = text.trimmed();
    QStringView rest = whole;
    std::optional<CurrentKind> kind = cutLeading(rest);
    // more than one may agree ("V rms AC"); if they do not, nobody can say which is meant
    while (const auto next = cutTrailing(rest)) {
        if (kind && *kind != *next)
            return {whole.toString(), std::nullopt};
        kind = next;
    }
    if (rest.endsWith(u'/') || rest.endsWith(u'+'))
        return {whole.toString(), std::nullopt};
    return {rest.toString(), kind};
}

} // namespace ohmwright
