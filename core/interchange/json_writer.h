// SPDX-License-Identifier: GPL-3.0-or-later
// JSON as bytes, written straight through: members and items in the order they are given, two
// spaces of indent, text as UTF-8 with only those characters escaped that must be (RFC 8259).
//
// A document tree would cost a big book most of a second to build and take down again.
#pragma once

#include <QByteArray>
#include <QString>

namespace ohmwright {

class JsonWriter
{
public:
    // An object or array opens with the value's place in what holds it, and closes empty as "{}".
    void openObject() { open('{'); }
    void closeObject() { close('}'); }
    void openArray() { open('['); }
    void closeArray() { close(']'); }
    // In an object, before each value.
    void name(const char *name);

    void text(const QString &text);
    void number(int number);
    void flag(bool flag);

    // The document, and a newline at its end.
    QByteArray take();

private:
    void open(char bracket);
    void close(char bracket);
    void startValue();
    void newLine();

    QByteArray m_bytes;
    qsizetype m_depth = 0;
    bool m_first = true; // nothing yet in what is open
    bool m_named = false;
};

} // namespace ohmwright
