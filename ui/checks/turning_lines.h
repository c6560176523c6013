// SPDX-License-Identifier: GPL-3.0-or-later
// What would turn a verdict: the values that alone would, searched for in the pauses between
// events, over what the check says itself. Hidden while there is nothing to say.
#pragma once

#include "core/verdicts/turning_words.h"
#include "ui/widgets/in_pauses.h"

#include <QWidget>

#include <optional>

class QVBoxLayout;

namespace ohmwright::ui {

class Theme;

class TurningLines : public QWidget
{
    Q_OBJECT

public:
    TurningLines(const Theme &theme, const Check &check, QWidget *parent = nullptr);

    // Told once it has ended. The book it searches must not change before; none stops one that
    // runs.
    void search(std::optional<TurningSearch> search);
    [[nodiscard]] bool isSearching() const { return m_search.has_value(); }

signals:
    void ended();

private:
    void tell(const std::vector<ToldTurning> &told);

    const Theme &m_theme;
    const Verdict m_verdict;
    const QStringList m_general;
    std::optional<TurningSearch> m_search;
    InPauses m_pauses;
    QVBoxLayout *m_column;
    QWidget *m_lines = nullptr;
};

} // namespace ohmwright::ui
