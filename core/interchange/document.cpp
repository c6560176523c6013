// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/document.h"

#include "core/interchange/text_forms.h"

#include <QCoreApplication>
#include <QStringDecoder>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>
#include <utility>
#include <vector>

namespace ohmwright {

using Json = nlohmann::ordered_json;

namespace {

// The format itself is five levels deep, and its largest record has some thirty fields.
constexpr std::size_t kDeepest = 32;
constexpr std::size_t kMostFields = 64;

QString tr(const char *text)
{
    return QCoreApplication::translate("Interchange", text);
}

struct Spot
{
    qsizetype line = 1;
    qsizetype column = 1; // in characters
};

Spot spotOf(const QByteArray &bytes, qsizetype offset)
{
    Spot spot;
    for (const char c : QByteArrayView(bytes).first(offset)) {
        if (c == '\n') {
            ++spot.line;
            spot.column = 1;
        } else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) {
            ++spot.column; // bytes that go on with a character are not counted
        }
    }
    return spot;
}

// Takes nlohmann's events and builds the document, refusing what its own builder lets pass.
class Builder final : public nlohmann::json_sax<Json>
{
public:
    explicit Builder(const QByteArray &bytes) : m_bytes(bytes) {}

    Json takeDocument() { return std::move(m_document); }
    [[nodiscard]] const Problem &problem() const { return m_problem; }

    bool null() override { return add(nullptr) != nullptr; }
    bool boolean(bool value) override { return add(value) != nullptr; }
    bool number_integer(number_integer_t value) override { return add(value) != nullptr; }
    bool number_unsigned(number_unsigned_t value) override { return add(value) != nullptr; }
    bool number_float(number_float_t value, const string_t & /*text*/) override
    {
        return add(value) != nullptr;
    }
    bool string(string_t &value) override { return add(std::move(value)) != nullptr; }
    bool binary(binary_t & /*value*/) override { return false; } // not in JSON text
    bool start_object(std::size_t /*size*/) override { return open(Json::object()); }
    bool end_object() override { return close(); }
    bool start_array(std::size_t /*size*/) override { return open(Json::array()); }
    bool end_array() override { return close(); }

    bool key(string_t &name) override
    {
        Level &level = m_levels.back();
        level.name = std::move(name);
        if (level.value->contains(level.name))
            return refuse(
                pointer(),
                tr("The field %1 is given twice.").arg(forms::quoted(textOf(level.name))));
        if (level.value->size() >= kMostFields) {
            level.name.clear();
            return refuse(pointer(false), tr("This has more fields than anything in a book."));
        }
        return true;
    }

    bool parse_error(std::size_t position, const std::string &lastToken,
                     const nlohmann::detail::exception &error) override
    {
        const qsizetype offset =
            std::clamp<qsizetype>(static_cast<qsizetype>(position) - 1, 0, m_bytes.size());
        const Spot spot = spotOf(m_bytes, offset);
        const auto at = [&](const QString &sentence) {
            return sentence.arg(spot.line).arg(spot.column);
        };
        const QByteArray what = error.what();
        if (what.contains("ill-formed UTF-8"))
            return refuse({}, at(tr("At line %1, column %2 the file is not UTF-8 text.")),
                          tr("Save it as UTF-8."));
        if (what.contains("number overflow"))
            return refuse({}, at(tr("The number at line %1, column %2 is too large.")));
        if (what.contains("unexpected end of input"))
            return refuse({},
                          at(tr("The file ends at line %1, column %2, in the middle of its JSON.")),
                          tr("Perhaps it was not copied whole."));
        const QString token = textOf(lastToken);
        return refuse({}, tr("Line %1, column %2 is not JSON: %3 does not belong there.")
                              .arg(QString::number(spot.line), QString::number(spot.column),
                                   forms::quoted(token.right(20))));
    }

private:
    struct Level
    {
        Json *value = nullptr;
        std::string name; // of the member being read, in an object
    };

    bool refuse(const QString &where, const QString &sentence, const QString &whatToDo = {})
    {
        m_problem = {ProblemCode::BadInput, sentence, whatToDo, where};
        return false;
    }

    // Of the value being read, or of the innermost object or array that is open.
    [[nodiscard]] QString pointer(bool ofValue = true) const
    {
        QString text;
        for (std::size_t i = 0; i + (ofValue ? 0 : 1) < m_levels.size(); ++i) {
            const Level &level = m_levels[i];
            if (level.value->is_object())
                text += pointerStep(level.name);
            else
                text += QStringLiteral("/%1").arg(level.value->size() -
                                                  (i + 1 < m_levels.size() ? 1 : 0));
        }
        return text;
    }

    template <class V>
    Json *add(V &&value)
    {
        if (m_levels.empty()) {
            m_document = std::forward<V>(value);
            return &m_document;
        }
        Level &level = m_levels.back();
        if (level.value->is_array())
            return &level.value->emplace_back(std::forward<V>(value));
        return &level.value->emplace(level.name, std::forward<V>(value)).first.value();
    }

    bool open(Json empty)
    {
        if (m_levels.size() >= kDeepest)
            return refuse(pointer(), tr("This is nested deeper than anything in a book."));
        m_levels.push_back({add(std::move(empty)), {}});
        return true;
    }

    bool close()
    {
        m_levels.pop_back();
        return true;
    }

    const QByteArray &m_bytes;
    Json m_document;
    std::vector<Level> m_levels;
    Problem m_problem;
};

std::optional<Problem> wrongStart(const QByteArray &bytes)
{
    const auto problem = [](const QString &sentence, const QString &whatToDo) {
        return Problem{ProblemCode::BadInput, sentence, whatToDo, {}};
    };
    if (bytes.trimmed().isEmpty())
        return problem(tr("The file is empty."), {});
    if (bytes.startsWith("\xEF\xBB\xBF"))
        return problem(tr("The file starts with a byte order mark, which JSON does not have."),
                       tr("Save it as UTF-8 without the mark."));
    if (bytes.startsWith("\xFF\xFE") || bytes.startsWith("\xFE\xFF"))
        return problem(tr("The file is UTF-16 text, not UTF-8."), tr("Save it as UTF-8."));
    return std::nullopt;
}

} // namespace

QString Place::pointer() const
{
    if (!m_up)
        return {};
    return m_up->pointer() + (m_name ? pointerStep(m_name)
                                     : u'/' + QString::number(static_cast<qulonglong>(m_index)));
}

QString textOf(const std::string &utf8)
{
    QStringDecoder decode(QStringDecoder::Utf8, QStringDecoder::Flag::Stateless |
                                                    QStringDecoder::Flag::ConvertInitialBom);
    return decode(QByteArrayView(utf8.data(), static_cast<qsizetype>(utf8.size())));
}

QString pointerStep(const std::string &name)
{
    QString step = textOf(name);
    step.replace(u'~', QLatin1String("~0"));
    step.replace(u'/', QLatin1String("~1"));
    return u'/' + step;
}

Result<Json> readDocument(const QByteArray &bytes)
{
    if (auto problem = wrongStart(bytes))
        return fail(std::move(*problem));
    Builder builder(bytes);
    if (!Json::sax_parse(bytes.begin(), bytes.end(), &builder))
        return fail(builder.problem());
    return builder.takeDocument();
}

} // namespace ohmwright
