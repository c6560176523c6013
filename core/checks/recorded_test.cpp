// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/recorded_test.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("RecordedTest", text);
}

void takeWord(Worksheet &sheet, const QString &name, const QString &word, const QString &field,
              const QString &doubt)
{
    Origin origin;
    origin.name = name;
    origin.field = field;
    origin.evidence = Evidence::Measured;
    sheet.takeChoice(origin, word.trimmed());
    if (word.trimmed().isEmpty())
        sheet.doubt(doubt);
}

} // namespace

void takeRecord(Worksheet &sheet, const RecordedTest &record)
{
    if (record.by.trimmed().isEmpty() && !record.on.isValid() &&
        record.instrument.trimmed().isEmpty())
        sheet.notMeasured();
    takeWord(sheet, tr("who measured"), record.by, record.byField,
             tr("It is not recorded by whom."));
    takeWord(sheet, tr("when it was measured"),
             record.on.isValid() ? record.on.toString(Qt::ISODate) : QString(), record.onField,
             tr("It is not recorded when."));
    takeWord(sheet, tr("with which instrument"), record.instrument, record.instrumentField,
             tr("It is not recorded with which instrument."));
}

} // namespace ohmwright
