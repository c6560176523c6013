// SPDX-License-Identifier: GPL-3.0-or-later
// The sheets of paper that the chart is painted on, one after the other: the pages of a PDF or a
// printer, or one SVG drawing each. Lengths are points; the painter stands at the top left corner
// of what the margins leave.
#pragma once

#include <QByteArray>
#include <QPainter>
#include <QRectF>
#include <QSizeF>
#include <QString>

#include <functional>
#include <memory>
#include <vector>

class QPagedPaintDevice;

namespace ohmwright::ui {

class LoomPages
{
public:
    using Draw = std::function<void(QPainter &)>;

    LoomPages() = default;
    virtual ~LoomPages() = default;
    LoomPages(const LoomPages &) = delete;
    LoomPages &operator=(const LoomPages &) = delete;

    // Of the sheet begun last; begin() the first one before.
    [[nodiscard]] virtual QPainter &painter() = 0;
    // False if there is to be no further sheet: the printer is out of paper, the disk is full.
    [[nodiscard]] virtual bool begin() = 0;
    // Draws with the transform that painter() has now; nothing of it reaches out of `cut`, which
    // is in the units of that transform (moved and scaled, not turned).
    virtual void paintCut(const QRectF &cut, const Draw &draw) = 0;
    // What the margins leave.
    [[nodiscard]] virtual QSizeF room() const = 0;
    // What the signs stand for, in words, where a file can say so.
    virtual void describe(const QString &words) { Q_UNUSED(words) }
};

class DevicePages final : public LoomPages
{
public:
    // As the device's page is laid out.
    explicit DevicePages(QPagedPaintDevice &device) : m_device(device) {}

    [[nodiscard]] QPainter &painter() override { return m_painter; }
    [[nodiscard]] bool begin() override;
    void paintCut(const QRectF &cut, const Draw &draw) override;
    [[nodiscard]] QSizeF room() const override;
    // False if the device did not take it all.
    [[nodiscard]] bool end();

private:
    QPagedPaintDevice &m_device;
    QPainter m_painter;
};

// SVG 1.1. Qt's generator knows no clipping, so what is cut is drawn by a generator of its own, and
// stands in a group that has a clip path. Gradients and patterns are not for it: they stand outside
// the group that is taken over, under names that would clash.
class SvgPages final : public LoomPages
{
public:
    // The whole sheet and what is left free around. `family` is named as the one this program
    // embeds in its papers; readers that have none such are told others.
    SvgPages(QSizeF sheet, double margin, QString family);
    ~SvgPages() override;

    [[nodiscard]] QPainter &painter() override;
    [[nodiscard]] bool begin() override;
    void paintCut(const QRectF &cut, const Draw &draw) override;
    [[nodiscard]] QSizeF room() const override;
    void describe(const QString &words) override { m_description = words; }
    // A drawing for each sheet, which ends the last one.
    [[nodiscard]] std::vector<QByteArray> documents(const QString &title);

private:
    struct Layer;
    struct Sheet;

    [[nodiscard]] QByteArray documentOf(const Sheet &sheet, const QString &title) const;

    QSizeF m_sheet;
    double m_margin;
    QString m_family;
    QString m_description;
    std::vector<std::unique_ptr<Sheet>> m_sheets;
};

} // namespace ohmwright::ui
