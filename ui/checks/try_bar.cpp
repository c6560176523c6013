// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/try_bar.h"

#include "ui/checks/check_words.h"
#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/problem_line.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

// Around the outline, in line with what stands below.
constexpr int kLeft = 20;
constexpr int kRight = 16;
constexpr int kTop = 14;
constexpr std::size_t kNamedChanges = 4; // more are counted

QLabel *words(const Theme &theme, Lettering lettering)
{
    auto *label = new QLabel;
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setFont(theme.font(lettering));
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

QString told(const ScratchChange &change)
{
    return TryBar::tr("%1: %2 → %3")
        .arg(change.name, change.before.isEmpty() ? TryBar::tr("not known") : change.before,
             change.after);
}

} // namespace

QString turnedTold(const std::vector<CheckEntry> &entries)
{
    QStringList counted;
    for (const Verdict verdict : kWorstFirst) {
        const auto count = static_cast<int>(
            std::count_if(entries.begin(), entries.end(), [&](const CheckEntry &entry) {
                return entry.before && entry.check.verdict == verdict;
            }));
        if (count > 0)
            counted << (count == 1 ? TryBar::tr("1 verdict turns to “%1”").arg(verdictWord(verdict))
                                   : TryBar::tr("%1 verdicts turn to “%2”")
                                         .arg(count)
                                         .arg(verdictWord(verdict)));
    }
    const auto made = static_cast<int>(std::count_if(
        entries.begin(), entries.end(), [](const CheckEntry &entry) { return entry.isNew; }));
    if (made > 0)
        counted << (made == 1 ? TryBar::tr("1 check is new")
                              : TryBar::tr("%1 checks are new").arg(made));
    return counted.isEmpty() ? TryBar::tr("No verdict turns.")
                             : QString(counted.join(QStringLiteral(", ")) + QLatin1Char('.'));
}

TryBar::TryBar(const Theme &theme, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_changes(words(theme, Lettering::Strong)),
      m_turned(words(theme, Lettering::Body)), m_problem(new ProblemLine(theme)),
      m_keep(new QPushButton(tr("&Keep"))), m_drop(new QPushButton(tr("&Drop")))
{
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(kLeft + 16, kTop + 10, kRight + 14, 10);
    row->setSpacing(10);
    auto *column = new QVBoxLayout;
    column->setSpacing(3);
    column->addWidget(m_changes);
    column->addWidget(m_turned);
    column->addWidget(m_problem);
    row->addLayout(column, 1);
    makePrimary(*m_keep);
    m_keep->setToolTip(tr("All changes into the book, as one edit that undo takes back"));
    m_keep->setAccessibleDescription(m_keep->toolTip());
    m_drop->setToolTip(tr("Forgets the changes; the book is as it was"));
    m_drop->setAccessibleDescription(m_drop->toolTip());
    row->addWidget(m_keep, 0, Qt::AlignVCenter);
    row->addWidget(m_drop, 0, Qt::AlignVCenter);
    connect(m_keep, &QPushButton::clicked, this, &TryBar::keepWanted);
    connect(m_drop, &QPushButton::clicked, this, &TryBar::dropWanted);
}

void TryBar::showTried(const std::vector<ScratchChange> &changes,
                       const std::vector<CheckEntry> &entries)
{
    QStringList lines;
    for (std::size_t i = 0; i < changes.size() && i < kNamedChanges; ++i)
        lines << told(changes[i]);
    if (changes.size() > kNamedChanges)
        lines << tr("and %1 more").arg(changes.size() - kNamedChanges);
    m_changes->setText(lines.isEmpty() ? tr("Trying on a scratch copy")
                                       : lines.join(QStringLiteral("; ")));
    m_turned->setText(lines.isEmpty() ? tr("Change a value on the right and see which verdicts "
                                           "turn. The book stays as it is.")
                                      : turnedTold(entries));
    m_keep->setEnabled(!changes.empty());
    showProblem({});
}

void TryBar::showProblem(const QString &sentence)
{
    m_problem->setProblem(sentence);
}

void TryBar::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens &tokens = m_theme.tokens();
    QPen dashed(tokens.ink, 1.4, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    dashed.setDashPattern({5, 3});
    painter.setPen(dashed);
    painter.setBrush(tokens.panel);
    painter.drawRect(QRectF(rect()).adjusted(kLeft + 1, kTop + 1, -kRight - 1, -1));
}

} // namespace ohmwright::ui
