// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/chip_row.h"

#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/figures.h"

#include <QAbstractButton>
#include <QEvent>
#include <QFontMetricsF>
#include <QKeyEvent>
#include <QPainter>
#include <QSignalBlocker>
#include <QtMath>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kGap = 6;
constexpr int kAround = 11;
constexpr int kTick = 14; // the tick of a chip that is on, with its gap
constexpr int kCountGap = 7;

class Chip : public QAbstractButton
{
public:
    Chip(const Theme &theme, QWidget *parent) : QAbstractButton(parent), m_theme(theme)
    {
        setCheckable(true);
        setAttribute(Qt::WA_Hover);
        setFont(theme.font(Lettering::Small));
    }

    void setCountText(const QString &count)
    {
        m_count = count;
        updateGeometry();
        update();
    }

    // As wide on as off, so that the row does not move under the pointer.
    [[nodiscard]] QSize sizeHint() const override
    {
        const QFontMetricsF metrics(font());
        double width = kAround + kTick + metrics.horizontalAdvance(text()) + kAround;
        if (!m_count.isEmpty())
            width += kCountGap + tabularWidth(metrics, m_count);
        return {qCeil(width), qCeil(metrics.height()) + 13};
    }

protected:
    void paintEvent(QPaintEvent *) override
    {
        const Tokens &tokens = m_theme.tokens();
        const bool over = underMouse() && isEnabled();
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const double pen = isChecked() ? 1.5 : 1;
        painter.setPen(QPen(isChecked() || over ? tokens.ink : tokens.mute, pen));
        painter.setBrush(isChecked() ? tokens.tint() : over ? tokens.hover() : tokens.panel);
        painter.drawRoundedRect(QRectF(rect()).adjusted(pen / 2, pen / 2, -pen / 2, -pen / 2), 2.5,
                                2.5);
        if (hasFocus())
            paintFocusRing(painter, rect(), tokens);

        const QFontMetricsF metrics(font());
        const double middle = height() / 2.0;
        const double baseline = middle + (metrics.ascent() - metrics.descent()) / 2;
        const double words = metrics.horizontalAdvance(text()) +
                             (m_count.isEmpty() ? 0 : kCountGap + tabularWidth(metrics, m_count));
        double x = isChecked() ? kAround + kTick : (width() - words) / 2;
        if (isChecked()) {
            painter.setPen(QPen(tokens.ink, 1.75, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
            painter.setBrush(Qt::NoBrush);
            painter.drawPolyline(QPolygonF{{kAround - 0.5, middle + 0.5},
                                           {kAround + 2.5, middle + 3.5},
                                           {kAround + 8, middle - 3.5}});
        }
        painter.setPen(isEnabled() ? tokens.ink : tokens.mute);
        painter.drawText(QPointF(x, baseline), text());
        x += metrics.horizontalAdvance(text()) + kCountGap;
        painter.setPen(tokens.mute);
        paintTabular(painter, x, baseline, m_count);
    }

private:
    const Theme &m_theme;
    QString m_count;
};

} // namespace

ChipRow::ChipRow(const Theme &theme, const QString &name, ChipMode mode, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_name(name), m_mode(mode)
{
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAccessibleName(name);
}

void ChipRow::addChip(const QString &key, const QString &text, bool on)
{
    auto *chip = new Chip(m_theme, this);
    m_entries.push_back({key, text, std::nullopt, chip});
    const std::size_t index = m_entries.size() - 1;
    chip->setChecked(m_mode == ChipMode::One ? on || index == 0 : on);
    if (m_mode == ChipMode::One && on) {
        for (std::size_t i = 0; i < index; ++i)
            m_entries[i].chip->setChecked(false);
    }
    chip->setFocusPolicy(index == 0 ? Qt::StrongFocus : Qt::ClickFocus);
    chip->installEventFilter(this);
    connect(chip, &QAbstractButton::clicked, this, [this, index] { switched(index); });
    showText(m_entries.back());
    chip->setVisible(true);
    layOut(width(), true);
    updateGeometry();
}

ChipRow::Entry *ChipRow::find(const QString &key)
{
    const auto found = std::find_if(m_entries.begin(), m_entries.end(),
                                    [&](const Entry &entry) { return entry.key == key; });
    return found == m_entries.end() ? nullptr : &*found;
}

void ChipRow::showText(Entry &entry)
{
    auto *chip = static_cast<Chip *>(entry.chip);
    chip->setText(entry.text);
    chip->setCountText(entry.count ? QString::number(*entry.count) : QString());
    chip->setAccessibleName(entry.count ? tr("%1: %2, %3").arg(m_name, entry.text).arg(*entry.count)
                                        : tr("%1: %2").arg(m_name, entry.text));
}

void ChipRow::setCount(const QString &key, std::optional<int> count)
{
    if (Entry *entry = find(key)) {
        entry->count = count;
        showText(*entry);
        layOut(width(), true);
        updateGeometry();
    }
}

void ChipRow::setOn(const QString &key, bool on)
{
    Entry *entry = find(key);
    if (!entry || entry->chip->isChecked() == on)
        return;
    if (m_mode == ChipMode::One && !on)
        return;
    entry->chip->setChecked(on);
    switched(static_cast<std::size_t>(entry - m_entries.data()));
}

bool ChipRow::isOn(const QString &key) const
{
    return keysOn().contains(key);
}

QStringList ChipRow::keysOn() const
{
    QStringList keys;
    for (const Entry &entry : m_entries) {
        if (entry.chip->isChecked())
            keys.push_back(entry.key);
    }
    return keys;
}

void ChipRow::switched(std::size_t index)
{
    if (m_mode == ChipMode::One) {
        for (std::size_t i = 0; i < m_entries.size(); ++i)
            m_entries[i].chip->setChecked(i == index);
    }
    emit changed(keysOn());
}

void ChipRow::stopAt(std::size_t index)
{
    for (std::size_t i = 0; i < m_entries.size(); ++i)
        m_entries[i].chip->setFocusPolicy(i == index ? Qt::StrongFocus : Qt::ClickFocus);
}

bool ChipRow::eventFilter(QObject *watched, QEvent *event)
{
    const auto found = std::find_if(m_entries.begin(), m_entries.end(),
                                    [&](const Entry &entry) { return entry.chip == watched; });
    if (found == m_entries.end())
        return QWidget::eventFilter(watched, event);
    const auto index = static_cast<std::size_t>(found - m_entries.begin());
    if (event->type() == QEvent::FocusIn)
        stopAt(index);
    if (event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    std::size_t next = index;
    switch (static_cast<QKeyEvent *>(event)->key()) {
    case Qt::Key_Right:
    case Qt::Key_Down:
        next = (index + 1) % m_entries.size();
        break;
    case Qt::Key_Left:
    case Qt::Key_Up:
        next = (index + m_entries.size() - 1) % m_entries.size();
        break;
    case Qt::Key_Home:
        next = 0;
        break;
    case Qt::Key_End:
        next = m_entries.size() - 1;
        break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        m_entries[index].chip->click();
        return true;
    default:
        return QWidget::eventFilter(watched, event);
    }
    m_entries[next].chip->setFocus(Qt::TabFocusReason);
    return true;
}

int ChipRow::layOut(int width, bool place) const
{
    int x = 0;
    int y = 0;
    int line = 0;
    for (const Entry &entry : m_entries) {
        const QSize size = entry.chip->sizeHint();
        if (x > 0 && x + size.width() > width) {
            x = 0;
            y += line + kGap;
            line = 0;
        }
        if (place)
            entry.chip->setGeometry(x, y, size.width(), size.height());
        x += size.width() + kGap;
        line = std::max(line, size.height());
    }
    return y + line;
}

QSize ChipRow::sizeHint() const
{
    int width = 0;
    int height = 0;
    for (const Entry &entry : m_entries) {
        width += entry.chip->sizeHint().width() + kGap;
        height = std::max(height, entry.chip->sizeHint().height());
    }
    return {std::max(0, width - kGap), height};
}

QSize ChipRow::minimumSizeHint() const
{
    int width = 0;
    for (const Entry &entry : m_entries)
        width = std::max(width, entry.chip->sizeHint().width());
    return {width, sizeHint().height()};
}

int ChipRow::heightForWidth(int width) const
{
    return layOut(width, false);
}

void ChipRow::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    layOut(width(), true);
}

void ChipRow::changeEvent(QEvent *event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        layOut(width(), true);
}

} // namespace ohmwright::ui
