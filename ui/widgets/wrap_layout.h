// SPDX-License-Identifier: GPL-3.0-or-later
// Widgets side by side, in as many rows as the width takes, each as wide as it wants to be.
#pragma once

#include <QLayout>

#include <memory>
#include <vector>

namespace ohmwright::ui {

class WrapLayout : public QLayout
{
public:
    // `gap` in pixels, between neighbours and between rows.
    explicit WrapLayout(QWidget *parent, int gap);
    ~WrapLayout() override;

    void addItem(QLayoutItem *item) override;
    [[nodiscard]] int count() const override;
    [[nodiscard]] QLayoutItem *itemAt(int index) const override;
    QLayoutItem *takeAt(int index) override;
    [[nodiscard]] Qt::Orientations expandingDirections() const override { return {}; }
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSize() const override;
    void setGeometry(const QRect &rect) override;

private:
    // Returns the height taken; moves the items only if `place`.
    int layOut(const QRect &rect, bool place) const;

    int m_gap;
    std::vector<std::unique_ptr<QLayoutItem>> m_items;
};

} // namespace ohmwright::ui
