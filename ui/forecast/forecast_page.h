// SPDX-License-Identifier: GPL-3.0-or-later
// The forecast as a page: milestones at 50, 80 and 95 %, what drives the next one, what to order by
// when, what would help, a question of one's own, the cash needed, and what the hours logged say
// about estimates.
//
// While a forecast is made anew, what the last one told stays.
#pragma once

#include "core/book/book.h"
#include "ui/shell/message_strip.h"

#include <QScrollArea>

class QLabel;
class QProgressBar;
class QPushButton;
class QVBoxLayout;

namespace ohmwright::ui {

class Forecaster;
class ForecastTable;
class SectionTitle;
class Theme;

class ForecastPage : public QScrollArea
{
    Q_OBJECT

public:
    ForecastPage(Book &book, Forecaster &forecaster, const Theme &theme, QWidget *parent = nullptr);

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);
    void taskWanted(const QString &key);
    void partWanted(const QString &key);
    void recordWanted(const QString &table, const QString &key);

protected:
    void showEvent(QShowEvent *event) override;

private:
    void makeTables(QVBoxLayout &column);
    void follow(const QString &key);
    void refresh();
    void showProgress();
    void fillMilestones();
    void fillDriving();
    void fillOrders();
    void fillChoices();
    void fillGains();
    void fillCash();
    void fillLearned();

    Book &m_book;
    Forecaster &m_forecaster;
    const Theme &m_theme;
    QLabel *m_facts;
    QLabel *m_doubts;
    QLabel *m_state;
    QProgressBar *m_progress;
    QPushButton *m_stop;
    ForecastTable *m_milestones = nullptr;
    ForecastTable *m_driving = nullptr;
    ForecastTable *m_orders = nullptr;
    ForecastTable *m_choices = nullptr;
    ForecastTable *m_gains = nullptr;
    ForecastTable *m_cash = nullptr;
    QWidget *m_try = nullptr;
    QWidget *m_learnedBlock = nullptr;
    QVBoxLayout *m_learned = nullptr;
};

} // namespace ohmwright::ui
