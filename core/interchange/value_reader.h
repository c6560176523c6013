// SPDX-License-Identifier: GPL-3.0-or-later
// One JSON value into one field, for every type a field can have.
//
// The first thing that is wrong is kept as the reader's problem and everything after it is passed
// over, so that callers need not look after each field.
#pragma once

#include "core/interchange/document.h"
#include "core/quantity/amount.h"
#include "core/quantity/money.h"
#include "core/quantity/result.h"
#include "core/records/field.h"

#include <QDate>
#include <QString>
#include <QStringList>

#include <nlohmann/json_fwd.hpp>
#include <optional>

namespace ohmwright {

class ValueReader
{
public:
    using Json = nlohmann::ordered_json;

    [[nodiscard]] bool ok() const { return !m_problem; }
    [[nodiscard]] const Problem &problem() const { return *m_problem; }
    // Keeps the problem unless there is one already; false, to return.
    bool refuse(Problem problem);
    bool refuse(const Place &at, const QString &sentence, const QString &whatToDo = {});

    bool expectObject(const Json &value, const Place &at);
    bool expectArray(const Json &value, const Place &at);

    bool read(const Json &value, const Place &at, QString &into);
    bool read(const Json &value, const Place &at, bool &into);
    bool read(const Json &value, const Place &at, int &into);
    bool read(const Json &value, const Place &at, QDate &into);
    bool read(const Json &value, const Place &at, Amount &into);
    bool read(const Json &value, const Place &at, Money &into);
    bool read(const Json &value, const Place &at, Rate &into);
    bool read(const Json &value, const Place &at, Currency &into);

    template <WordedEnum E>
    bool read(const Json &value, const Place &at, E &into)
    {
        QString word;
        if (!read(value, at, word))
            return false;
        const std::optional<E> found = fromWord<E>(word);
        if (!found) {
            QStringList words;
            for (const char *w : EnumWords<E>::words)
                words << QString::fromLatin1(w);
            return refuseWord(at, word, words);
        }
        into = *found;
        return true;
    }

private:
    bool refuseType(const Json &value, const Place &at, const QString &wanted);
    bool refuseWord(const Place &at, const QString &word, const QStringList &words);
    template <class T>
    bool take(const Place &at, Result<T> read, T &into);

    std::optional<Problem> m_problem;
};

} // namespace ohmwright
