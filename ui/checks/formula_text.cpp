// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/formula_text.h"

#include "core/sheet/formula_pieces.h"

#include <algorithm>

namespace ohmwright::ui {

namespace {

const QString kEquals = QStringLiteral("=");

bool isOperator(QChar c)
{
    static const QString kOperators = QStringLiteral("=·/+−√≤≥∫Σ^±");
    return kOperators.contains(c);
}

bool isFormulaText(const QString &text)
{
    return std::any_of(text.begin(), text.end(), isOperator);
}

// Letters proper; the raised and lowered ones of Unicode belong to the letter before them.
bool isPlainLetter(QChar c)
{
    return c.isLetter() && c.category() != QChar::Letter_Modifier;
}

// Figures put into the formula, and not a remark about them.
bool isArithmetic(const QString &text)
{
    if (text.isEmpty() || text.contains(QLatin1String(", ")))
        return false;
    static const QString kStarts = QStringLiteral("(√½¼−-π");
    const QChar first = text.front();
    if (!first.isDigit() && !kStarts.contains(first))
        return false;
    return std::any_of(text.begin() + 1, text.end(), isOperator);
}

bool isFigure(const QString &text)
{
    if (text.isEmpty())
        return false;
    const QChar first = text.front();
    return first.isDigit() || ((first == QChar(0x2212) || first == QLatin1Char('-')) &&
                               text.size() > 1 && text.at(1).isDigit());
}

// Single letters stand slanted, as quantities do.
QString slanted(const QString &text)
{
    QString html;
    for (qsizetype i = 0; i < text.size(); ++i) {
        if (!isPlainLetter(text.at(i))) {
            html += QString(text.at(i)).toHtmlEscaped();
            continue;
        }
        qsizetype end = i;
        while (end < text.size() && isPlainLetter(text.at(end)))
            ++end;
        const QString word = text.mid(i, end - i).toHtmlEscaped();
        html += word.size() == 1 ? QString(QStringLiteral("<i>") + word + QStringLiteral("</i>"))
                                 : word;
        i = end - 1;
    }
    return html;
}

} // namespace

QString formulaHtml(const QString &formula)
{
    return isFormulaText(formula) ? symbolHtml(formula) : formula.toHtmlEscaped();
}

QString symbolHtml(const QString &formula)
{
    QString html;
    for (const sheet::FormulaPiece &piece : sheet::formulaPieces(formula)) {
        switch (piece.place) {
        case sheet::Lettered::OnLine:
            html += slanted(piece.text);
            break;
        case sheet::Lettered::Lowered:
            html += QString(QStringLiteral("<sub>") + piece.text.toHtmlEscaped() +
                            QStringLiteral("</sub>"));
            break;
        case sheet::Lettered::Raised:
            html += QString(QStringLiteral("<sup>") + piece.text.toHtmlEscaped() +
                            QStringLiteral("</sup>"));
            break;
        }
    }
    return html;
}

std::vector<WorkedLine> workedLines(const CheckStep &step)
{
    std::vector<WorkedLine> lines;
    if (!step.formula.isEmpty()) {
        const QString sign = QStringLiteral(" = ");
        const qsizetype at = step.formula.indexOf(sign);
        // a second sign would leave half of the formula unaligned; it then stands as it is
        if (at > 0 && step.formula.count(sign) == 1)
            lines.push_back(
                {step.formula.left(at), kEquals, step.formula.mid(at + sign.size()), true, false});
        else
            lines.push_back({{}, {}, step.formula, true, false});
    }
    if (!step.worked.isEmpty() && step.worked != step.result && step.worked != step.formula)
        lines.push_back(
            {{}, isArithmetic(step.worked) ? kEquals : QString(), step.worked, false, false});
    if (!step.result.isEmpty())
        lines.push_back(
            {{}, isFigure(step.result) ? kEquals : QString(), step.result, false, true});
    return lines;
}

} // namespace ohmwright::ui
