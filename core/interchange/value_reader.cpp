// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/value_reader.h"

#include "core/interchange/text_forms.h"

#include <QCoreApplication>

#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Interchange", text);
}

QString kindOf(const nlohmann::ordered_json &value)
{
    if (value.is_object())
        return tr("an object");
    if (value.is_array())
        return tr("an array");
    if (value.is_string())
        return tr("text");
    if (value.is_boolean())
        return tr("true or false");
    return tr("a number");
}

} // namespace

bool ValueReader::refuse(Problem problem)
{
    if (!m_problem)
        m_problem = std::move(problem);
    return false;
}

bool ValueReader::refuse(const Place &at, const QString &sentence, const QString &whatToDo)
{
    return refuse({ProblemCode::BadInput, sentence, whatToDo, at.pointer()});
}

bool ValueReader::refuseType(const Json &value, const Place &at, const QString &wanted)
{
    if (value.is_null())
        return refuse(at, tr("There is null where %1 is wanted.").arg(wanted),
                      tr("Leave out what is not known."));
    return refuse(at, tr("There is %1 where %2 is wanted.").arg(kindOf(value), wanted));
}

bool ValueReader::refuseWord(const Place &at, const QString &word, const QStringList &words)
{
    return refuse(at, tr("%1 is none of the words for this.").arg(forms::quoted(word)),
                  tr("Write one of: %1.").arg(words.join(QLatin1String(", "))));
}

bool ValueReader::expectObject(const Json &value, const Place &at)
{
    return value.is_object() || refuseType(value, at, tr("an object"));
}

bool ValueReader::expectArray(const Json &value, const Place &at)
{
    return value.is_array() || refuseType(value, at, tr("an array"));
}

bool ValueReader::read(const Json &value, const Place &at, QString &into)
{
    const auto *text = value.get_ptr<const Json::string_t *>();
    if (!text)
        return refuseType(value, at, tr("text"));
    into = textOf(*text);
    return true;
}

bool ValueReader::read(const Json &value, const Place &at, bool &into)
{
    if (!value.is_boolean())
        return refuseType(value, at, tr("true or false"));
    into = value.get<bool>();
    return true;
}

bool ValueReader::read(const Json &value, const Place &at, int &into)
{
    if (!value.is_number())
        return refuseType(value, at, tr("a whole number"));
    // 6.0 is a whole number in JSON Schema, and every int is exact as a double
    const auto number = value.get<double>();
    if (number != std::floor(number))
        return refuse(at, tr("There is a fraction where a whole number is wanted."));
    if (number < std::numeric_limits<int>::min() || number > std::numeric_limits<int>::max())
        return refuse(at, tr("This number is too large."));
    into = static_cast<int>(number);
    return true;
}

template <class T>
bool ValueReader::take(const Place &at, Result<T> read, T &into)
{
    if (!read) {
        Problem problem = read.error();
        problem.where = at.pointer();
        return refuse(std::move(problem));
    }
    into = *read;
    return true;
}

bool ValueReader::read(const Json &value, const Place &at, QDate &into)
{
    QString text;
    return read(value, at, text) && take(at, forms::readDate(text), into);
}

bool ValueReader::read(const Json &value, const Place &at, Amount &into)
{
    QString text;
    return read(value, at, text) && take(at, forms::readAmount(text), into);
}

bool ValueReader::read(const Json &value, const Place &at, Money &into)
{
    QString text;
    return read(value, at, text) && take(at, forms::readMoney(text), into);
}

bool ValueReader::read(const Json &value, const Place &at, Rate &into)
{
    QString text;
    return read(value, at, text) && take(at, forms::readRate(text), into);
}

bool ValueReader::read(const Json &value, const Place &at, Currency &into)
{
    QString text;
    return read(value, at, text) && take(at, forms::readCurrency(text), into);
}

} // namespace ohmwright
