// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/turning_lines.h"

#include "ui/checks/check_words.h"
#include "ui/checks/ruled_grid.h"
#include "ui/shell/theme.h"
#include "ui/widgets/section_title.h"

#include <QLabel>
#include <QVBoxLayout>

#include <utility>

namespace ohmwright::ui {

namespace {

// Whoever walks down the list of checks does not wait for what is passed by.
constexpr std::chrono::milliseconds kUntilStill{250};
constexpr int kIndent = 14;
constexpr int kApart = 6; // what would mend it from what would spoil it

} // namespace

TurningLines::TurningLines(const Theme &theme, const Check &check, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_verdict(check.verdict), m_general(check.turnedBy),
      m_column(new QVBoxLayout(this))
{
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(8);
    m_column->addWidget(new SectionTitle(theme, tr("What would turn it")));
    tell({});
}

void TurningLines::search(std::optional<TurningSearch> search)
{
    m_search = std::move(search);
    if (!m_search)
        return m_pauses.stop();
    m_pauses.start([this] { return m_search->step(); },
                   [this] {
                       tell(told(m_search->found(), m_verdict));
                       m_search.reset();
                       emit ended();
                   },
                   kUntilStill);
}

void TurningLines::tell(const std::vector<ToldTurning> &told)
{
    delete m_lines;
    m_lines = new QWidget;
    auto *column = new QVBoxLayout(m_lines);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    const auto add = [&](TurningPoint::Way way) {
        for (const ToldTurning &one : told) {
            if (one.way != way)
                continue;
            column->addWidget(selectableWords(m_theme, one.head, Lettering::Body, true));
            for (const QString &line : one.lines) {
                QLabel *words = selectableWords(m_theme, line);
                words->setContentsMargins(kIndent, 0, 0, 0);
                column->addWidget(words);
            }
            column->addSpacing(kApart);
        }
    };
    add(TurningPoint::Way::Mended);
    for (const QString &sentence : m_general)
        column->addWidget(selectableWords(m_theme, sentence));
    if (!m_general.isEmpty())
        column->addSpacing(kApart);
    add(TurningPoint::Way::Spoilt);
    m_column->addWidget(m_lines);
    const bool says = !told.empty() || !m_general.isEmpty();
    if (parentWidget() || !says) // shown without a parent it would be a window of its own
        setVisible(says);
}

} // namespace ohmwright::ui
