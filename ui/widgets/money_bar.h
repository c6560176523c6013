// SPDX-License-Identifier: GPL-3.0-or-later
// Money against an allowance as one bar: spent is solid, committed hatched, what is to come dotted,
// what lies beyond the allowance crossed. Told by pattern, so it prints and needs no colour.
#pragma once

#include <QLabel>
#include <QPoint>

#include <array>
#include <cstdint>

namespace ohmwright::ui {

class Theme;

// Minor units, all of one currency. Negative amounts (more got back than spent) are drawn as none.
struct MoneyShares
{
    std::int64_t spent = 0;
    std::int64_t committed = 0;
    std::int64_t toCome = 0;
    std::int64_t allowance = 0;

    [[nodiscard]] std::int64_t total() const;
    [[nodiscard]] bool overAllowance() const { return total() > allowance; }
    bool operator==(const MoneyShares &) const = default;
};

// A label as to a screen reader: it reads `spoken`.
class MoneyBar : public QLabel
{
    Q_OBJECT

public:
    explicit MoneyBar(const Theme &theme, QWidget *parent = nullptr);

    // `spoken` says the same in words: "850.00 EUR spent, 120.00 EUR committed, of 1 200.00 EUR".
    // `fullScale` is the amount at the right end, to draw several bars to one measure; 0 takes the
    // larger of total and allowance.
    void setShares(const MoneyShares &shares, const QString &spoken, std::int64_t fullScale = 0);
    [[nodiscard]] const MoneyShares &shares() const { return m_shares; }

    [[nodiscard]] QSize sizeHint() const override { return {240, 24}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {80, 24}; }

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    const Theme &m_theme;
    MoneyShares m_shares;
    std::int64_t m_fullScale = 0;
};

// What the patterns mean, in one line.
class MoneyBarLegend : public QLabel
{
    Q_OBJECT

public:
    explicit MoneyBarLegend(const Theme &theme, QWidget *parent = nullptr);

    // In one row; in as many as the width asks for where there is less.
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    [[nodiscard]] int rowHeight() const;
    // Where each entry starts: x, and the row as y.
    [[nodiscard]] std::array<QPoint, 4> places(int width) const;

    const Theme &m_theme;
};

} // namespace ohmwright::ui
