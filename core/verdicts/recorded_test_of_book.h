// SPDX-License-Identifier: GPL-3.0-or-later
// What the checks of test records have in common: who measured, when, with what; and what to ask
// for when a record does not say which circuit it is of.
#pragma once

#include "core/checks/recorded_test.h"
#include "core/verdicts/book_inputs.h"

#include <QCoreApplication>

namespace ohmwright {

inline RecordedTest recordedTest(const TestRecord &test)
{
    const auto at = [&test](const char *column) {
        return print(
            FieldAddress{RecordTraits<TestRecord>::table, test.key, QString::fromLatin1(column)});
    };
    return {test.doneBy,     test.doneOn.value_or(QDate()),
            test.instrument, at("done_by"),
            at("done_on"),   at("instrument")};
}

template <class Q>
Given<Q> missingCircuit(const TestRecord &test)
{
    Given<Q> missing = notKnown<Q>(
        QCoreApplication::translate("RecordedTestOfBook", "circuit of %1").arg(test.name));
    missing.origin.field =
        print(FieldAddress{RecordTraits<TestRecord>::table, test.key, QStringLiteral("circuit")});
    return missing;
}

// A reading that is a figure of the test, or, where there is only one, its value.
template <class Q>
Given<Q> readingOrValue(const BookInputs &in, const TestRecord &test, const char *name,
                        Measure measure)
{
    const Given<Q> reading = in.figure<Q>(name, test);
    if (in.has(name, test) || !test.value || test.value->measure() != measure)
        return reading;
    return in.field<Q>(test, &TestRecord::value, "value", reading.origin.name, Evidence::Measured,
                       test.instrument);
}

} // namespace ohmwright
