// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/formula_text.h"

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

bool isIndexLetter(QChar c)
{
    return c.isLetterOrNumber();
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

// The end of the bracket that opens at `at`; -1 if it never closes.
qsizetype closing(const QString &text, qsizetype at)
{
    int depth = 0;
    for (qsizetype i = at; i < text.size(); ++i) {
        if (text.at(i) == QLatin1Char('('))
            ++depth;
        else if (text.at(i) == QLatin1Char(')') && --depth == 0)
            return i;
    }
    return -1;
}

} // namespace

QString formulaHtml(const QString &formula)
{
    return isFormulaText(formula) ? symbolHtml(formula) : formula.toHtmlEscaped();
}

QString symbolHtml(const QString &formula)
{
    QString html;
    for (qsizetype i = 0; i < formula.size(); ++i) {
        const QChar c = formula.at(i);
        const bool hasNext = i + 1 < formula.size();
        if (c == QLatin1Char('_') && hasNext && isIndexLetter(formula.at(i + 1))) {
            qsizetype end = i + 1;
            while (end < formula.size() && isIndexLetter(formula.at(end)))
                ++end;
            html += QString(QStringLiteral("<sub>") + formula.mid(i + 1, end - i - 1) +
                            QStringLiteral("</sub>"));
            i = end - 1;
        } else if (c == QLatin1Char('^') && hasNext && formula.at(i + 1) == QLatin1Char('(') &&
                   closing(formula, i + 1) > 0) {
            const qsizetype end = closing(formula, i + 1);
            const QString power = formula.mid(i + 2, end - i - 2);
            html +=
                QString(QStringLiteral("<sup>") + power.toHtmlEscaped() + QStringLiteral("</sup>"));
            i = end;
        } else if (isPlainLetter(c)) {
            qsizetype end = i;
            while (end < formula.size() && isPlainLetter(formula.at(end)))
                ++end;
            const QString word = formula.mid(i, end - i).toHtmlEscaped();
            html += word.size() == 1
                        ? QString(QStringLiteral("<i>") + word + QStringLiteral("</i>"))
                        : word;
            i = end - 1;
        } else {
            html += QString(c).toHtmlEscaped();
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
