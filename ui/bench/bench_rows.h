// SPDX-License-Identifier: GPL-3.0-or-later
// The rows of the Bench: one line that leads somewhere, with a figure or a date at its left.
#pragma once

#include <QPushButton>
#include <QString>

namespace ohmwright::ui {

class Theme;

struct BenchRow
{
    QString lead;   // "start by 3 Dec", "12 days", narrow and muted
    QString title;  // what it is
    QString detail; // why, muted, may be empty
    bool highVoltage = false;
};

// A row is a button: the whole of it can be clicked, and Tab and Enter work.
class BenchRowButton : public QPushButton
{
    Q_OBJECT

public:
    BenchRowButton(const Theme &theme, BenchRow row, QWidget *parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    const Theme &m_theme;
    BenchRow m_row;
};

} // namespace ohmwright::ui
