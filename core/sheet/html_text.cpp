// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/html_text.h"

#include "core/sheet/plain_text.h"

#include <QSet>

#include <algorithm>

namespace ohmwright::sheet {

void HtmlText::element(QByteArrayView open, QStringView plain, QByteArrayView close)
{
    raw(open);
    text(plain);
    raw(close);
}

void HtmlText::appendEscaped(QStringView plain, QByteArrayView lineFeed)
{
    const QByteArray utf8 = cleaned(plain).toUtf8();
    for (const char c : utf8) {
        switch (c) {
        case '&':
            raw("&amp;");
            break;
        case '<':
            raw("&lt;");
            break;
        case '>':
            raw("&gt;");
            break;
        case '"':
            raw("&quot;");
            break;
        case '\'':
            raw("&#39;");
            break;
        case '\n':
            raw(lineFeed);
            break;
        default:
            m_out.append(c);
        }
    }
}

std::vector<Anchored> anchoredHeadings(const Document &document)
{
    std::vector<Anchored> result;
    QSet<QString> taken{QStringLiteral("mark-holds"), QStringLiteral("mark-tight"),
                        QStringLiteral("mark-fails"), QStringLiteral("mark-unknown"),
                        QStringLiteral("mark-caution")};
    for (const Block &block : document.blocks) {
        const auto *heading = std::get_if<Heading>(&block);
        if (!heading)
            continue;
        QString wanted = cleaned(heading->anchor).simplified();
        wanted.replace(QLatin1Char(' '), QLatin1Char('-'));
        if (wanted.isEmpty())
            wanted = QStringLiteral("section-%1").arg(result.size() + 1);
        QString id = wanted;
        for (int copy = 2; taken.contains(id); ++copy)
            id = QStringLiteral("%1-%2").arg(wanted).arg(copy);
        taken.insert(id);
        result.push_back({std::clamp(heading->level, 1, 3), heading->text, id});
    }
    return result;
}

QByteArrayView imageType(const QByteArray &bytes)
{
    if (bytes.startsWith("\xff\xd8\xff"))
        return "image/jpeg";
    if (bytes.startsWith("\x89PNG\r\n\x1a\n"))
        return "image/png";
    if (bytes.startsWith("GIF87a") || bytes.startsWith("GIF89a"))
        return "image/gif";
    if (bytes.startsWith("RIFF") && bytes.mid(8, 4) == "WEBP")
        return "image/webp";
    const QByteArray start = bytes.left(1024).trimmed();
    if (start.startsWith('<') && start.contains("<svg"))
        return "image/svg+xml";
    return {};
}

double widestInCh(QStringView text)
{
    double width = 0.0;
    for (const QChar c : text) {
        if (c.isDigit())
            width += 1.0;
        else if (c.isSpace() || c == QLatin1Char('.') || c == QLatin1Char(','))
            width += 0.6;
        else if (c.isLower() && c != QLatin1Char('m') && c != QLatin1Char('w'))
            width += 1.1;
        else
            width += 1.6;
    }
    return width;
}

} // namespace ohmwright::sheet
