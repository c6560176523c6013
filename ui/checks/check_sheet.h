// SPDX-License-Identifier: GPL-3.0-or-later
// The right half of the Checks page: one check as a page of working, from the verdict over what it
// was given and how it was worked to what would turn it, with source and caution beside.
#pragma once

#include "ui/checks/check_view.h"
#include "ui/checks/value_cell.h"

#include <QScrollArea>

#include <optional>

class QBoxLayout;

namespace ohmwright::ui {

class GivenTable;
class Outside;
class Theme;
class TurningLines;

class CheckSheet : public QScrollArea
{
    Q_OBJECT

public:
    CheckSheet(const Theme &theme, Outside &outside, ValueCell::Save save,
               QWidget *parent = nullptr);

    // Nothing: says that none is chosen. What is being typed into a value stays, if the check is
    // the same one.
    void showCheck(std::optional<CheckView> view);
    [[nodiscard]] const std::optional<CheckView> &view() const { return m_view; }
    // Told with the check that is shown; none stops a search that runs.
    void searchTurning(std::optional<TurningSearch> search);
    // To the first value that can be edited, else to the page itself.
    void enter();

signals:
    void findOutWanted(const QString &unknownName);
    void said(const QString &sentence, bool problem);

protected:
    void resizeEvent(QResizeEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    // What a person was at, to be found again when the page is built anew.
    struct Place
    {
        QString focusedField, focusedUnknown;
        QString editedField, typed, problem;
        bool hadFocus = false;
    };

    void build();
    QWidget *makeHead(const CheckView &view);
    QWidget *makeAside(const Check &check);
    QWidget *makeWorking(const CheckView &view);
    void arrangeAside();
    [[nodiscard]] Place place() const;
    void restore(const Place &place);

    const Theme &m_theme;
    Outside &m_outside;
    const ValueCell::Save m_save;
    std::optional<CheckView> m_view;
    GivenTable *m_given = nullptr; // of the page as built
    TurningLines *m_turning = nullptr;
    QBoxLayout *m_body = nullptr; // working and aside
    QWidget *m_aside = nullptr;
};

} // namespace ohmwright::ui
