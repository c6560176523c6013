// SPDX-License-Identifier: GPL-3.0-or-later
// A key for a new record: made from its name, numbered if another already has it.
#pragma once

#include "core/records/records.h"
#include "core/records/rules.h"

namespace ohmwright {

template <KeyedRecord R>
QString freshKey(const Records &records, const QString &name)
{
    QString base = keyFrom(name);
    if (!records.byKey<R>(base))
        return base;
    for (int number = 2;; ++number) {
        const QString key = base + u'-' + QString::number(number);
        if (!records.byKey<R>(key))
            return key;
    }
}

} // namespace ohmwright
