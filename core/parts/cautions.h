// SPDX-License-Identifier: GPL-3.0-or-later
// Cautions shown where the danger is, on screen and on paper. Their words are data, in
// resources/cautions.json.
#pragma once

#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace ohmwright {

struct CautionText
{
    QString id; // "high-voltage", "battery", …
    QString title;
    bool highVoltage = false;
    QStringList lines;
};

std::vector<CautionText> allCautions();
std::optional<CautionText> cautionById(const QString &id);

// Low-energy checks to do on arrival, before opening a unit may end its warranty; in order.
QStringList acceptanceChecks();

} // namespace ohmwright
