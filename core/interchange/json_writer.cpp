// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/json_writer.h"

#include <utility>

namespace ohmwright {

void JsonWriter::newLine()
{
    m_bytes += '\n';
    m_bytes.append(m_depth * 2, ' ');
}

void JsonWriter::startValue()
{
    if (m_named) {
        m_named = false;
        return;
    }
    if (m_depth == 0)
        return;
    if (!m_first)
        m_bytes += ',';
    newLine();
    m_first = false;
}

void JsonWriter::open(char bracket)
{
    startValue();
    m_bytes += bracket;
    ++m_depth;
    m_first = true;
}

void JsonWriter::close(char bracket)
{
    --m_depth;
    if (!m_first)
        newLine();
    m_bytes += bracket;
    m_first = false;
}

void JsonWriter::name(const char *name)
{
    startValue();
    m_bytes += '"';
    m_bytes += name;
    m_bytes += "\": ";
    m_named = true;
}

void JsonWriter::text(const QString &text)
{
    startValue();
    m_bytes += '"';
    const QByteArray utf8 = text.toUtf8();
    for (const char c : utf8) {
        switch (c) {
        case '"':
            m_bytes += "\\\"";
            break;
        case '\\':
            m_bytes += "\\\\";
            break;
        case '\n':
            m_bytes += "\\n";
            break;
        case '\r':
            m_bytes += "\\r";
            break;
        case '\t':
            m_bytes += "\\t";
            break;
        default:
            if (static_cast<unsigned char>(c) < 0x20)
                m_bytes += "\\u00" + QByteArray::number(c, 16).rightJustified(2, '0');
            else
                m_bytes += c;
        }
    }
    m_bytes += '"';
}

void JsonWriter::number(int number)
{
    startValue();
    m_bytes += QByteArray::number(number);
}

void JsonWriter::flag(bool flag)
{
    startValue();
    m_bytes += flag ? "true" : "false";
}

QByteArray JsonWriter::take()
{
    m_bytes += '\n';
    return std::exchange(m_bytes, {});
}

} // namespace ohmwright
