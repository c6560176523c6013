// SPDX-License-Identifier: GPL-3.0-or-later
// Over the Checks page while changes are tried on a scratch copy: what was changed, what it turns,
// and the two ways out. Its outline is dashed, as of whatever is not real yet.
#pragma once

#include "ui/checks/checks_order.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace ohmwright::ui {

class ProblemLine;
class Theme;

class TryBar : public QWidget
{
    Q_OBJECT

public:
    explicit TryBar(const Theme &theme, QWidget *parent = nullptr);

    void showTried(const std::vector<ScratchChange> &changes,
                   const std::vector<CheckEntry> &entries);
    void showProblem(const QString &sentence);
    [[nodiscard]] QPushButton *keepButton() const { return m_keep; }
    [[nodiscard]] QPushButton *dropButton() const { return m_drop; }

signals:
    void keepWanted();
    void dropWanted();

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    const Theme &m_theme;
    QLabel *m_changes;
    QLabel *m_turned;
    ProblemLine *m_problem;
    QPushButton *m_keep;
    QPushButton *m_drop;
};

// "1 turns to fails, 2 turn to holds"; "no verdict turns".
[[nodiscard]] QString turnedTold(const std::vector<CheckEntry> &entries);

} // namespace ohmwright::ui
