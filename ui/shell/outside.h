// SPDX-License-Identifier: GPL-3.0-or-later
// Outside: whatever a page asks of the world beyond its window. Made in app/, passed in, so that a
// test answers in its place and nothing blocks.
#pragma once

#include <QString>
#include <QStringList>

class QUrl;
class QWidget;

namespace ohmwright::ui {

class Outside
{
public:
    virtual ~Outside() = default;
    // `filter` as QFileDialog takes it. Empty when the person thought better of it.
    [[nodiscard]] virtual QStringList chooseFiles(QWidget *over, const QString &title,
                                                  const QString &filter) = 0;
    [[nodiscard]] virtual QString chooseSaveFile(QWidget *over, const QString &title,
                                                 const QString &suggestion,
                                                 const QString &filter) = 0;
    // In whatever program the desktop has for it.
    virtual void openFile(const QString &path) = 0;
    virtual void openAddress(const QUrl &address) = 0;
};

} // namespace ohmwright::ui
