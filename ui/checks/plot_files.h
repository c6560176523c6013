// SPDX-License-Identifier: GPL-3.0-or-later
// A plot on paper: as a PDF page, as an SVG drawing, or sent to a printer.
#pragma once

#include "core/checks/check.h"
#include "core/quantity/result.h"

#include <QByteArray>
#include <QString>

class QPrinter;

namespace ohmwright::ui {

// By the name's ending: ".pdf" or ".svg"; another or none is taken as PDF. Io when it cannot be
// written; an older file is then left as it was.
Outcome savePlot(const Plot &plot, const QString &path);
// As an SVG drawing with its title, ink on white. Needs a QApplication.
[[nodiscard]] QByteArray plotSvg(const Plot &plot);
// On one landscape page, as wide as it allows.
void printPlot(const Plot &plot, QPrinter &printer);
// "Effort against road load by gear.pdf", without what file systems do not take.
[[nodiscard]] QString plotFileName(const Plot &plot);

} // namespace ohmwright::ui
