// SPDX-License-Identifier: GPL-3.0-or-later
// A verdict or state on its own: the shape, then the word.
#pragma once

#include "ui/widgets/marks.h"

#include <QLabel>

namespace ohmwright::ui {

class Theme;

// A label as to a screen reader, which reads its text; only the painting is its own.
class StateMark : public QLabel
{
    Q_OBJECT

public:
    StateMark(const Theme &theme, Mark mark, QWidget *parent = nullptr);

    [[nodiscard]] Mark mark() const { return m_mark; }
    void setMark(Mark mark);
    // Instead of the bare word, and never without it: "holds, 12 V to spare".
    void setWords(const QString &words);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    const Theme &m_theme;
    Mark m_mark;
};

} // namespace ohmwright::ui
