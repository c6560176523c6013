// SPDX-License-Identifier: GPL-3.0-or-later
// The HTML writer's pen and its small judgements: escaping, ids for headings, kinds of pictures.
#pragma once

#include "core/sheet/document.h"

#include <QByteArray>
#include <QByteArrayView>
#include <QString>
#include <QStringView>

#include <utility>
#include <vector>

namespace ohmwright::sheet {

// Collects markup. Text that came from a person goes through text() or attribute(), which escape.
class HtmlText
{
public:
    template <class... Parts>
    void raw(const Parts &...markup)
    {
        (m_out.append(markup), ...);
    }
    void text(QStringView plain) { appendEscaped(plain, "<br/>"); }
    // For a value in double quotes.
    void attribute(QStringView plain) { appendEscaped(plain, "&#10;"); }
    void element(QByteArrayView open, QStringView plain, QByteArrayView close);
    [[nodiscard]] QByteArray taken() { return std::exchange(m_out, {}); }

private:
    void appendEscaped(QStringView plain, QByteArrayView lineFeed);
    QByteArray m_out;
};

struct Anchored
{
    int level = 1; // 1 to 3
    QString text;
    QString id;
};

// The headings in order, each with an id to be linked by: without spaces, and used only once.
std::vector<Anchored> anchoredHeadings(const Document &document);

// The media type told by a picture's first bytes; empty for what browsers do not show.
QByteArrayView imageType(const QByteArray &bytes);

// An upper bound of a text's width in ch, the width of a figure.
double widestInCh(QStringView text);

} // namespace ohmwright::sheet
