// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/formula_pieces.h"

namespace ohmwright::sheet {

namespace {

// The end of the bracket that opens at `at`; -1 if it never closes.
qsizetype closing(const QString &text, qsizetype at)
{
    int depth = 0;
    for (qsizetype i = at; i < text.size(); ++i) {
        if (text.at(i) == u'(')
            ++depth;
        else if (text.at(i) == u')' && --depth == 0)
            return i;
    }
    return -1;
}

} // namespace

std::vector<FormulaPiece> formulaPieces(const QString &formula)
{
    std::vector<FormulaPiece> pieces;
    QString line;
    const auto endLine = [&] {
        if (!line.isEmpty())
            pieces.push_back({line, Lettered::OnLine});
        line.clear();
    };
    for (qsizetype i = 0; i < formula.size(); ++i) {
        const QChar c = formula.at(i);
        const bool follows = i > 0 && i + 1 < formula.size() && !formula.at(i - 1).isSpace();
        if (follows && c == u'_' && formula.at(i + 1).isLetterOrNumber()) {
            qsizetype end = i + 1;
            while (end < formula.size() && formula.at(end).isLetterOrNumber())
                ++end;
            // two indices of one letter: "F_t,R"
            if (end + 1 < formula.size() && formula.at(end) == u',' &&
                formula.at(end + 1).isLetterOrNumber()) {
                ++end;
                while (end < formula.size() && formula.at(end).isLetterOrNumber())
                    ++end;
            }
            endLine();
            pieces.push_back({formula.mid(i + 1, end - i - 1), Lettered::Lowered});
            i = end - 1;
        } else if (follows && c == u'^' && formula.at(i + 1) == u'(' &&
                   closing(formula, i + 1) > 0) {
            const qsizetype end = closing(formula, i + 1);
            endLine();
            pieces.push_back({formula.mid(i + 2, end - i - 2), Lettered::Raised});
            i = end;
        } else {
            line += c;
        }
    }
    endLine();
    return pieces;
}

} // namespace ohmwright::sheet
