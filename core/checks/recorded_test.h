// SPDX-License-Identifier: GPL-3.0-or-later
// RecordedTest: who measured something, when and with what. A measurement nobody signs for decides
// nothing, so each of the three is an input whose absence makes a verdict unknown.
#pragma once

#include "core/checks/worksheet.h"

#include <QDate>

namespace ohmwright {

struct RecordedTest
{
    QString by;
    QDate on; // invalid: not recorded
    QString instrument;
    // Where each can be filled in, as Origin::field; may be empty.
    QString byField = {}, onField = {}, instrumentField = {};
};

void takeRecord(Worksheet &sheet, const RecordedTest &record);

} // namespace ohmwright
