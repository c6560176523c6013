// SPDX-License-Identifier: GPL-3.0-or-later
// The world outside the window, answering what a test has set and remembering what was opened.
#pragma once

#include "ui/shell/outside.h"

#include <QUrl>

namespace ohmwright::ui {

class FakeOutside final : public Outside
{
public:
    QStringList chooseFiles(QWidget *, const QString &, const QString &) override { return files; }
    QString chooseSaveFile(QWidget *, const QString &, const QString &, const QString &) override
    {
        return saveTo;
    }
    void openFile(const QString &path) override { opened << path; }
    void openAddress(const QUrl &address) override { opened << address.toString(); }

    QStringList files;  // what chooseFiles gives
    QString saveTo;     // what chooseSaveFile gives; empty: the person thought better of it
    QStringList opened; // what was opened outside
};

} // namespace ohmwright::ui
