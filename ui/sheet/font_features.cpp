// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/font_features.h"

#include <QtEndian>

#include <array>
#include <cstdint>
#include <map>
#include <utility>

namespace ohmwright::sheet {

namespace {

using Glyph = std::uint32_t;
using CharacterMap = std::map<std::uint32_t, Glyph>;
using Substitutions = std::map<Glyph, Glyph>;
using Tables = std::map<QByteArray, QByteArray>; // by tag, in the order the directory wants

// Reads big-endian numbers; what lies outside reads as 0, so a damaged font ends loops early.
class Reader
{
public:
    explicit Reader(QByteArray bytes) : m_bytes(std::move(bytes)) {}

    [[nodiscard]] std::uint32_t u16(std::size_t at) const { return number<std::uint16_t>(at); }
    [[nodiscard]] std::uint32_t u32(std::size_t at) const { return number<std::uint32_t>(at); }
    [[nodiscard]] QByteArray tag(std::size_t at) const
    {
        return m_bytes.mid(static_cast<qsizetype>(at), 4);
    }
    [[nodiscard]] QByteArray bytes(std::size_t at, std::size_t size) const
    {
        return m_bytes.mid(static_cast<qsizetype>(at), static_cast<qsizetype>(size));
    }
    [[nodiscard]] std::size_t size() const { return static_cast<std::size_t>(m_bytes.size()); }

private:
    template <class T>
    [[nodiscard]] T number(std::size_t at) const
    {
        if (at > size() || size() - at < sizeof(T))
            return 0;
        return qFromBigEndian<T>(m_bytes.constData() + at);
    }
    QByteArray m_bytes;
};

void append16(QByteArray &out, std::uint32_t value)
{
    const auto big = qToBigEndian(static_cast<std::uint16_t>(value));
    out.append(reinterpret_cast<const char *>(&big), sizeof big);
}

void append32(QByteArray &out, std::uint32_t value)
{
    const auto big = qToBigEndian(value);
    out.append(reinterpret_cast<const char *>(&big), sizeof big);
}

Tables readTables(const QByteArray &font)
{
    constexpr std::size_t kDirectory = 12;
    constexpr std::size_t kRecord = 16;
    const Reader reader(font);
    Tables tables;
    const std::size_t count = reader.u16(4);
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t record = kDirectory + i * kRecord;
        const std::size_t offset = reader.u32(record + 8);
        const std::size_t length = reader.u32(record + 12);
        if (offset + length > reader.size())
            return {};
        tables[reader.tag(record)] = reader.bytes(offset, length);
    }
    return tables;
}

CharacterMap readCharacterMap(const QByteArray &cmap)
{
    constexpr std::uint32_t kLastCharacter = 0x10ffff;
    const Reader reader(cmap);
    for (std::size_t i = 0; i < reader.u16(2); ++i) {
        const std::size_t subtable = reader.u32(4 + i * 8 + 4);
        if (reader.u16(subtable) != 12)
            continue;
        CharacterMap map;
        const std::size_t groups = reader.u32(subtable + 12);
        for (std::size_t g = 0; g < groups && subtable + 16 + g * 12 < reader.size(); ++g) {
            const std::size_t at = subtable + 16 + g * 12;
            const std::uint32_t first = reader.u32(at);
            const std::uint32_t last = reader.u32(at + 4);
            const std::uint32_t glyph = reader.u32(at + 8);
            for (std::uint32_t c = first; c <= last && c <= kLastCharacter; ++c)
                map[c] = glyph + (c - first);
        }
        return map;
    }
    return {};
}

std::vector<Glyph> readCoverage(const Reader &gsub, std::size_t at)
{
    std::vector<Glyph> glyphs;
    const std::size_t count = gsub.u16(at + 2);
    for (std::size_t i = 0; i < count; ++i) {
        if (gsub.u16(at) == 1) {
            glyphs.push_back(gsub.u16(at + 4 + i * 2));
        } else {
            const std::size_t range = at + 4 + i * 6;
            for (Glyph g = gsub.u16(range); g <= gsub.u16(range + 2); ++g)
                glyphs.push_back(g);
        }
    }
    return glyphs;
}

void readLookup(const Reader &gsub, std::size_t lookup, Substitutions &result)
{
    constexpr std::uint32_t kSingle = 1;
    constexpr std::uint32_t kExtension = 7;
    for (std::size_t i = 0; i < gsub.u16(lookup + 4); ++i) {
        std::size_t subtable = lookup + gsub.u16(lookup + 6 + i * 2);
        std::uint32_t type = gsub.u16(lookup);
        if (type == kExtension) {
            type = gsub.u16(subtable + 2);
            subtable += gsub.u32(subtable + 4);
        }
        if (type != kSingle)
            continue;
        const std::vector<Glyph> covered = readCoverage(gsub, subtable + gsub.u16(subtable + 2));
        for (std::size_t g = 0; g < covered.size(); ++g) {
            const Glyph to = gsub.u16(subtable) == 1
                                 ? (covered[g] + gsub.u16(subtable + 4)) & 0xffffU
                                 : gsub.u16(subtable + 6 + g * 2);
            result.emplace(covered[g], to);
        }
    }
}

Substitutions readFeature(const QByteArray &table, const QByteArray &feature)
{
    const Reader gsub(table);
    const std::size_t features = gsub.u16(6);
    const std::size_t lookups = gsub.u16(8);
    Substitutions result;
    for (std::size_t i = 0; i < gsub.u16(features); ++i) {
        const std::size_t record = features + 2 + i * 6;
        if (gsub.tag(record) != feature)
            continue;
        const std::size_t at = features + gsub.u16(record + 4);
        for (std::size_t l = 0; l < gsub.u16(at + 2); ++l) {
            const std::size_t index = gsub.u16(at + 4 + l * 2);
            readLookup(gsub, lookups + gsub.u16(lookups + 2 + index * 2), result);
        }
    }
    return result;
}

bool isWanted(const FontFeature &feature, std::uint32_t character)
{
    constexpr std::uint32_t kLastOfOneUnit = 0xffff;
    return feature.characters.isEmpty() ||
           (character <= kLastOfOneUnit &&
            feature.characters.contains(QChar(static_cast<char16_t>(character))));
}

QByteArray writeCharacterMap(const CharacterMap &map)
{
    QByteArray groups;
    std::uint32_t count = 0;
    for (auto it = map.begin(); it != map.end();) {
        const auto [first, glyph] = *it;
        std::uint32_t last = first;
        for (++it;
             it != map.end() && it->first == last + 1 && it->second == glyph + (it->first - first);
             ++it)
            last = it->first;
        append32(groups, first);
        append32(groups, last);
        append32(groups, glyph);
        ++count;
    }
    QByteArray table;
    append16(table, 0);
    append16(table, 2);
    constexpr std::array<std::pair<std::uint32_t, std::uint32_t>, 2> kEncodings{{{0, 4}, {3, 10}}};
    for (const auto &[platform, encoding] : kEncodings) {
        append16(table, platform);
        append16(table, encoding);
        append32(table, 4 + 2 * 8);
    }
    append16(table, 12);
    append16(table, 0);
    append32(table, 16 + static_cast<std::uint32_t>(groups.size()));
    append32(table, 0);
    append32(table, count);
    return table + groups;
}

QByteArray writeNames(const QByteArray &original, const QString &family, const QString &style)
{
    constexpr std::uint32_t kMicrosoft = 3;
    constexpr std::uint32_t kUnicode = 1;
    constexpr std::uint32_t kEnglish = 0x409;
    const auto utf16 = [](const QString &text) {
        QByteArray out;
        for (const QChar c : text)
            append16(out, c.unicode());
        return out;
    };
    QString postScript = family + QLatin1Char('-') + style;
    postScript.remove(QLatin1Char(' '));
    std::map<std::uint32_t, QByteArray> names;
    const Reader reader(original);
    for (std::size_t i = 0; i < reader.u16(2); ++i) {
        const std::size_t at = 6 + i * 12;
        const std::uint32_t id = reader.u16(at + 6);
        // copyright, licence and its address stay with the font whatever it is called
        if (reader.u16(at) == kMicrosoft && (id == 0 || id == 13 || id == 14))
            names[id] = reader.bytes(reader.u16(4) + reader.u16(at + 10), reader.u16(at + 8));
    }
    names[1] = utf16(family);
    names[2] = utf16(style);
    names[4] = utf16(family + QLatin1Char(' ') + style);
    names[6] = utf16(postScript);

    QByteArray records;
    QByteArray strings;
    for (const auto &[id, text] : names) {
        append16(records, kMicrosoft);
        append16(records, kUnicode);
        append16(records, kEnglish);
        append16(records, id);
        append16(records, static_cast<std::uint32_t>(text.size()));
        append16(records, static_cast<std::uint32_t>(strings.size()));
        strings += text;
    }
    QByteArray table;
    append16(table, 0);
    append16(table, static_cast<std::uint32_t>(names.size()));
    append16(table, 6 + static_cast<std::uint32_t>(records.size()));
    return table + records + strings;
}

std::uint32_t checksum(const QByteArray &padded)
{
    const Reader reader(padded);
    std::uint32_t sum = 0;
    for (std::size_t at = 0; at < reader.size(); at += 4)
        sum += reader.u32(at);
    return sum;
}

QByteArray writeFont(const QByteArray &version, const Tables &tables)
{
    const auto count = static_cast<std::uint32_t>(tables.size());
    std::uint32_t power = 1;
    std::uint32_t log = 0;
    while (power * 2 <= count) {
        power *= 2;
        ++log;
    }
    QByteArray directory = version;
    append16(directory, count);
    append16(directory, power * 16);
    append16(directory, log);
    append16(directory, (count - power) * 16);
    QByteArray body;
    for (const auto &[tag, bytes] : tables) {
        QByteArray padded = bytes;
        padded.append((4 - padded.size() % 4) % 4, '\0');
        directory += tag;
        append32(directory, checksum(padded));
        append32(directory, 12 + count * 16 + static_cast<std::uint32_t>(body.size()));
        append32(directory, static_cast<std::uint32_t>(bytes.size()));
        body += padded;
    }
    return directory + body;
}

} // namespace

QByteArray withFeatures(const QByteArray &font, const std::vector<FontFeature> &features,
                        const QString &family, const QString &style)
{
    Tables tables = readTables(font);
    CharacterMap map = readCharacterMap(tables["cmap"]);
    if (map.empty())
        return {};
    for (const FontFeature &feature : features) {
        const Substitutions substitutions = readFeature(tables["GSUB"], feature.tag);
        for (auto &[character, glyph] : map) {
            if (!isWanted(feature, character))
                continue;
            if (const auto found = substitutions.find(glyph); found != substitutions.end())
                glyph = found->second;
        }
    }
    tables["cmap"] = writeCharacterMap(map);
    tables["name"] = writeNames(tables["name"], family, style);
    tables.erase("GSUB");
    tables.erase("DSIG");
    return writeFont(font.left(4), tables);
}

} // namespace ohmwright::sheet
