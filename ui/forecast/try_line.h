// SPDX-License-Identifier: GPL-3.0-or-later
// "Try": one change picked and told in a line, and below it what it would bring.
#pragma once

#include <QWidget>

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;

namespace ohmwright::ui {

class ChangeTrial;
class Forecaster;
class PickOrNew;
class Theme;

class TryLine : public QWidget
{
    Q_OBJECT

public:
    TryLine(Forecaster &forecaster, const Theme &theme, QWidget *parent = nullptr);

private:
    void makeValues();
    void fitValue();
    void ask();
    [[nodiscard]] QString code() const; // as after --try; what cannot be meant is refused
    void readBook();
    void showState();

    Forecaster &m_forecaster;
    const Theme &m_theme;
    ChangeTrial *m_trial;
    QComboBox *m_kind;
    QStackedWidget *m_values;
    QLineEdit *m_minutes = nullptr;
    QComboBox *m_eveningDay = nullptr;
    QLineEdit *m_hours = nullptr;
    QComboBox *m_helperDay = nullptr;
    PickOrNew *m_part = nullptr;
    PickOrNew *m_task = nullptr;
    QPushButton *m_button;
    QLabel *m_answer;
};

} // namespace ohmwright::ui
