// SPDX-License-Identifier: GPL-3.0-or-later
// One table of the forecast page under its heading: as high as its rows, or a sentence for none.
#pragma once

#include <QMap>
#include <QStringList>
#include <QWidget>

#include <vector>

class QLabel;
class QStandardItemModel;
class QTableView;

namespace ohmwright::ui {

class SectionTitle;
class Theme;

class ForecastTable : public QWidget
{
    Q_OBJECT

public:
    struct Column
    {
        QString header;
        bool figure = false; // on the decimal sign, at the right
        int decimals = 0;
        QString unit;          // the widest there is
        QString tip;           // on the header
        bool optional = false; // hidden while it is empty
    };
    struct Row
    {
        QStringList cells;
        QString key; // told when the row is activated; empty: leads nowhere
        QMap<int, QString> tips;
        bool heading = false; // its first cell alone, over all columns
    };

    // `none` stands in place of the table while it has no row. `name` is the heading too.
    ForecastTable(const Theme &theme, const QString &name, const std::vector<Column> &columns,
                  const QString &none, QWidget *parent = nullptr);

    void setName(const QString &name); // heading, and what a screen reader says
    void setRemark(const QString &remark);
    void fill(const std::vector<Row> &rows);
    [[nodiscard]] QTableView &view() { return *m_view; }

signals:
    void activated(const QString &key);

private:
    const Theme &m_theme;
    std::vector<Column> m_columns;
    SectionTitle *m_heading;
    QTableView *m_view;
    QStandardItemModel *m_model;
    QLabel *m_none;
};

} // namespace ohmwright::ui
