// SPDX-License-Identifier: GPL-3.0-or-later
// The forecast as a page: milestones at 50, 80 and 95 %, what drives the next one, what to order by
// when, what would help, the cash needed by month, and what the hours logged say about estimates.
#pragma once

#include "core/book/book.h"
#include "ui/shell/message_strip.h"

#include <QList>
#include <QScrollArea>

class QLabel;
class QProgressBar;
class QPushButton;
class QStackedLayout;
class QStandardItemModel;
class QTableView;
class QVBoxLayout;

namespace ohmwright::ui {

class Forecaster;
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
    struct Table
    {
        SectionTitle *heading = nullptr;
        QTableView *view = nullptr;
        QStandardItemModel *model = nullptr;
        QLabel *none = nullptr; // shown while there is no row
        QList<int> figures;     // columns of money, on their decimal sign
    };

    Table makeTable(QVBoxLayout &column, const QString &heading, const QStringList &headers,
                    const QString &none, const QList<int> &figures = {});
    void fill(Table &table, const std::vector<QStringList> &rows, const QStringList &keys,
              const QStringList &codes = {});
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
    QProgressBar *m_progress;
    QPushButton *m_stop;
    Table m_milestones, m_driving, m_orders, m_choices, m_gains, m_cash;
    SectionTitle *m_learnedHeading;
    QVBoxLayout *m_learned;
};

} // namespace ohmwright::ui
