// SPDX-License-Identifier: GPL-3.0-or-later
// What stands where there is nothing yet: what goes here, and the one button to start.
#pragma once

#include <QWidget>

class QLabel;
class QPushButton;

namespace ohmwright::ui {

class Theme;

class EmptyPage : public QWidget
{
    Q_OBJECT

public:
    // `icon` is a name of icons.h. `buttonText` may hold a mnemonic; without a text, no button.
    EmptyPage(const Theme &theme, const QString &icon, const QString &heading,
              const QString &sentences, const QString &buttonText, QWidget *parent = nullptr);

    [[nodiscard]] QPushButton *button() const { return m_button; }
    // A second way to begin, below the first.
    QPushButton *addButton(const QString &text);

signals:
    void started();

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    QLabel *m_text;
    QPushButton *m_button = nullptr;
};

} // namespace ohmwright::ui
