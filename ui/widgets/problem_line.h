// SPDX-License-Identifier: GPL-3.0-or-later
// One sentence of what is wrong, beside a triangle, where no single field is to blame. Hidden when
// nothing is.
#pragma once

#include <QLabel>

namespace ohmwright::ui {

class Theme;

class ProblemLine : public QLabel
{
    Q_OBJECT

public:
    explicit ProblemLine(const Theme &theme, QWidget *parent = nullptr);

    void setProblem(const QString &sentence);
    [[nodiscard]] QString problem() const { return text(); }

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    const Theme &m_theme;
};

} // namespace ohmwright::ui
