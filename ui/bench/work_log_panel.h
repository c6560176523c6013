// SPDX-License-Identifier: GPL-3.0-or-later
// The work log on the Bench: what is under way with its clock, start and stop, hours entered
// after, the last days with their notes and photos.
#pragma once

#include "core/book/book.h"
#include "ui/shell/message_strip.h"

#include <QTimer>
#include <QWidget>

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace ohmwright::ui {

class DropArea;
class EntryForm;
class Outside;
class PickOrNew;
class Theme;

class WorkLogPanel : public QWidget
{
    Q_OBJECT

public:
    WorkLogPanel(Book &book, const Theme &theme, QWidget *parent = nullptr);

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);
    void taskWanted(const QString &key);

private:
    void refresh();
    void tick();
    void startOrStop();
    Outcome enter();
    void keepFiles(const QStringList &paths);
    void keepPicture(const QImage &picture);
    void showDays();
    [[nodiscard]] QDateTime now() const;
    [[nodiscard]] std::optional<Id<Task>> pickedTask() const;
    [[nodiscard]] Attachment belonging() const;
    void tell(const Outcome &outcome, const QString &sentence);

    Book &m_book;
    const Theme &m_theme;
    QTimer m_minute;
    QLabel *m_underWay;
    EntryForm *m_form;
    PickOrNew *m_task;
    QPushButton *m_startStop;
    DropArea *m_photos;
    QVBoxLayout *m_days;
};

} // namespace ohmwright::ui
