// SPDX-License-Identifier: GPL-3.0-or-later
// A row of choices to switch on and off, to narrow a list down. Breaks into lines when it must.
//
// One stop for the Tab key: arrows, Home and End go from chip to chip, Space switches.
#pragma once

#include <QString>
#include <QStringList>
#include <QWidget>

#include <optional>
#include <vector>

class QAbstractButton;

namespace ohmwright::ui {

class Theme;

enum class ChipMode {
    Any, // each on its own
    One, // exactly one is on
};

class ChipRow : public QWidget
{
    Q_OBJECT

public:
    // `name` says what the choices are about; a screen reader reads it before each chip.
    ChipRow(const Theme &theme, const QString &name, ChipMode mode = ChipMode::Any,
            QWidget *parent = nullptr);

    void addChip(const QString &key, const QString &text, bool on = false);
    // A small number behind the text; none removes it.
    void setCount(const QString &key, std::optional<int> count);
    void setOn(const QString &key, bool on);
    [[nodiscard]] bool isOn(const QString &key) const;
    [[nodiscard]] QStringList keysOn() const; // in the order added

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;

signals:
    // A person, or setOn(), switched something.
    void changed(const QStringList &keysOn);

protected:
    void resizeEvent(QResizeEvent *event) override;
    void changeEvent(QEvent *event) override;
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    struct Entry
    {
        QString key;
        QString text;
        std::optional<int> count;
        QAbstractButton *chip;
    };

    [[nodiscard]] Entry *find(const QString &key);
    void showText(Entry &entry);
    void switched(std::size_t index);
    void stopAt(std::size_t index);
    int layOut(int width, bool place) const;

    const Theme &m_theme;
    QString m_name;
    ChipMode m_mode;
    std::vector<Entry> m_entries;
};

} // namespace ohmwright::ui
