// SPDX-License-Identifier: GPL-3.0-or-later
// Canonical form: every value is its length and its bytes, every list its count and its members,
// every block its name and its fields in the order of document.h. Lengths keep neighbours apart,
// so no two documents have the same form. Changing any of it changes every hash: raise kForm.
#include "core/sheet/content_hash.h"

#include <QByteArrayView>
#include <QCryptographicHash>

#include <cmath>
#include <cstdint>
#include <type_traits>

namespace ohmwright::sheet {

namespace {

constexpr QByteArrayView kForm = "ohmwright sheet 1";

class Canonical
{
public:
    Canonical() { put(kForm); }

    void put(QByteArrayView bytes)
    {
        put(static_cast<std::int64_t>(bytes.size()));
        m_hash.addData(bytes);
    }
    void put(const QString &text) { put(QByteArrayView(text.toUtf8())); }
    void put(std::int64_t number)
    {
        const QByteArray digits = QByteArray::number(static_cast<qlonglong>(number));
        m_hash.addData(QByteArrayView(digits));
        m_hash.addData(QByteArrayView(";"));
    }
    void put(int number) { put(static_cast<std::int64_t>(number)); }
    void put(bool flag) { put(static_cast<std::int64_t>(flag ? 1 : 0)); }
    template <class E>
    requires std::is_enum_v<E>
    void put(E value) { put(static_cast<std::int64_t>(value)); }
    template <class T>
    void put(const std::vector<T> &list)
    {
        put(static_cast<std::int64_t>(list.size()));
        for (const T &member : list)
            put(member);
    }

    void put(const Mark &mark)
    {
        put(mark.kind);
        put(wordOf(mark));
    }
    void put(const Run &run)
    {
        put(run.text);
        put(run.emphasis);
        put(run.mark.has_value());
        if (run.mark)
            put(*run.mark);
    }
    void put(const ListItem &item)
    {
        put(item.text);
        put(item.note);
        put(item.marks);
    }
    void put(const KeyValue &row)
    {
        put(row.label);
        put(row.value);
        put(row.note);
        put(row.marks);
        put(row.emphasis);
    }
    void put(const Column &column)
    {
        put(column.header);
        put(column.align);
        put(column.share);
    }
    void put(const Cell &cell)
    {
        put(cell.text);
        put(cell.evidence);
        put(cell.marks);
        put(cell.emphasis);
    }
    void put(const Row &row)
    {
        put(row.kind);
        put(row.cells);
    }
    void put(const SignatureLine &line)
    {
        put(line.role);
        put(line.statement);
        put(line.name);
    }

    void put(const Heading &heading)
    {
        put(QByteArrayView("heading"));
        put(heading.level);
        put(heading.text);
        put(heading.anchor);
    }
    void put(const Paragraph &paragraph)
    {
        put(QByteArrayView("paragraph"));
        put(paragraph.runs);
    }
    void put(const List &list)
    {
        put(QByteArrayView("list"));
        put(list.kind);
        put(list.items);
    }
    void put(const KeyValues &keyValues)
    {
        put(QByteArrayView("key values"));
        put(keyValues.rows);
    }
    void put(const Table &table)
    {
        put(QByteArrayView("table"));
        put(table.caption);
        put(table.columns);
        put(table.rows);
        put(table.whenEmpty);
    }
    void put(const Figure &figure)
    {
        put(QByteArrayView("figure"));
        if (figure.image.id.isEmpty() && !figure.image.bytes.isEmpty()) {
            put(QString::fromLatin1(
                QCryptographicHash::hash(figure.image.bytes, QCryptographicHash::Sha256).toHex()));
        } else {
            put(figure.image.id);
        }
        put(figure.caption);
        put(figure.altText);
        put(static_cast<std::int64_t>(std::llround(figure.maxHeight.in(metres(1e-6)))));
    }
    void put(const FigureRow &row)
    {
        put(QByteArrayView("figure row"));
        put(row.columns);
        put(row.figures);
    }
    void put(const Caution &caution)
    {
        put(QByteArrayView("caution"));
        put(caution.title);
        put(caution.lines);
        put(caution.highVoltage);
    }
    void put(const Signatures &signatures)
    {
        put(QByteArrayView("signatures"));
        put(signatures.lines);
    }
    void put(const PageBreak & /*unused*/) { put(QByteArrayView("page break")); }
    void put(const Contents &contents)
    {
        put(QByteArrayView("contents"));
        put(contents.depth);
    }

    [[nodiscard]] QString result() { return QString::fromLatin1(m_hash.result().toHex()); }

private:
    QCryptographicHash m_hash{QCryptographicHash::Sha256};
};

} // namespace

QString contentHash(const Document &document)
{
    Canonical canonical;
    canonical.put(document.title);
    canonical.put(document.subtitle);
    canonical.put(document.language);
    canonical.put(static_cast<std::int64_t>(document.blocks.size()));
    for (const Block &block : document.blocks)
        std::visit([&canonical](const auto &value) { canonical.put(value); }, block);
    return canonical.result();
}

QString shortHash(const QString &hash)
{
    constexpr qsizetype kGroups = 4;
    constexpr qsizetype kGroupSize = 4;
    QString result;
    for (qsizetype i = 0; i < kGroups && i * kGroupSize < hash.size(); ++i) {
        if (i > 0)
            result += QLatin1Char(' ');
        result += QStringView(hash).mid(i * kGroupSize, kGroupSize);
    }
    return result;
}

} // namespace ohmwright::sheet
