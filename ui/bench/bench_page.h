// SPDX-License-Identifier: GPL-3.0-or-later
// The Bench: where one stands on opening the book. What can be done now, what holds up the next
// milestone, what runs out soon, what must be ordered, what is left to spend, what was done last.
#pragma once

#include "core/book/book.h"
#include "core/parts/questions.h"
#include "core/plan/network.h"

#include <QPointer>
#include <QScrollArea>
#include <QSet>
#include <QTimer>

#include <utility>
#include <vector>

class QLabel;
class QVBoxLayout;

namespace ohmwright::ui {

class Forecaster;
class SectionTitle;
class Theme;
class WorkLogPanel;

class BenchPage : public QScrollArea
{
    Q_OBJECT

public:
    BenchPage(Book &book, Forecaster &forecaster, const Theme &theme, QWidget *parent = nullptr);
    [[nodiscard]] WorkLogPanel &workLog() { return *m_workLog; }
    void setAskedByChecks(std::vector<Question> questions);

signals:
    void taskWanted(const QString &key);
    // A move of what holds up that milestone (its key).
    void moveWanted(const QString &milestone, ohmwright::plan::MoveKind kind,
                    const QString &subject);
    void partWanted(const QString &key);
    void pageWanted(const QString &key);
    void logWanted();
    void forecastWanted();

protected:
    void showEvent(QShowEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    void rebuild();
    void addForecast(QVBoxLayout &column);
    void addOrders(QVBoxLayout &column);
    SectionTitle *addHeading(QVBoxLayout &column, const QString &text, const QString &remark);
    void showForecastState();
    void later();
    // How many rows of a list to show; all once its rest was asked for.
    [[nodiscard]] std::size_t shownOf(const QString &list, std::size_t all) const;
    // The rest of a list is said, not hidden, and a press away.
    void addRest(QVBoxLayout &column, const QString &list, std::size_t all);

    Book &m_book;
    Forecaster &m_forecaster;
    const Theme &m_theme;
    WorkLogPanel *m_workLog; // survives the rebuilding of the page, with what is typed in it
    // Headings over what the forecast told, each with its remark while that is up to date.
    std::vector<std::pair<QPointer<SectionTitle>, QString>> m_foretold;
    std::vector<Question> m_askedByChecks;
    QSet<QString> m_unfolded; // lists shown whole
    QTimer m_soon;
    bool m_stale = true;
    bool m_wide = true; // two columns
};

} // namespace ohmwright::ui
