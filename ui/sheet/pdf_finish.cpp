// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/pdf_finish.h"

#include <QFile>

// asks for the library's standard pointers; it warns while this is undecided
#define POINTERHOLDER_TRANSITION 4
#include <qpdf/Pipeline.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include <exception>
#include <stdexcept>
#include <string>
#include <vector>

namespace ohmwright::sheet {

namespace {

using Object = QPDFObjectHandle;

class SinkPipeline : public Pipeline
{
public:
    explicit SinkPipeline(const std::function<bool(QByteArrayView)> &sink)
        : Pipeline("file", nullptr), m_sink(sink)
    {}
    void write(unsigned char const *data, size_t size) override
    {
        const QByteArrayView bytes(reinterpret_cast<const char *>(data),
                                   static_cast<qsizetype>(size));
        if (!m_sink(bytes))
            throw std::runtime_error("the file took no more");
    }
    void finish() override {}

private:
    const std::function<bool(QByteArrayView)> &m_sink;
};

Object textObject(const QString &text)
{
    return Object::newUnicodeString(text.toStdString());
}

Object nameObject(const char *name)
{
    return Object::newName(name);
}

class Finisher
{
public:
    Finisher(QPDF &pdf, const PagedLayout &layout)
        : m_pdf(pdf), m_layout(layout), m_pages(QPDFPageDocumentHelper(pdf).getAllPages())
    {}

    void run(const std::optional<QDateTime> &madeAt)
    {
        sizePages();
        addOutline();
        addLinks();
        addCatalogue();
        if (madeAt)
            addDate(*madeAt);
    }

private:
    void sizePages()
    {
        const QSizeF size = m_layout.pageSize();
        Object box =
            Object::newArray({Object::newInteger(0), Object::newInteger(0),
                              Object::newReal(size.width(), 3), Object::newReal(size.height(), 3)});
        for (QPDFPageObjectHelper &page : m_pages)
            page.getObjectHandle().replaceKey("/MediaBox", box.shallowCopy());
    }

    Object destination(const PagedLayout::Bookmark &bookmark)
    {
        constexpr double kAbove = 6.0; // what is aimed at does not touch the window's edge
        const double top = m_layout.pageSize().height() - bookmark.top + kAbove;
        return Object::newArray(
            {m_pages.at(static_cast<std::size_t>(bookmark.page)).getObjectHandle(),
             nameObject("/XYZ"), Object::newNull(), Object::newReal(top, 2), Object::newNull()});
    }

    struct Entry
    {
        Object object;
        int level = 0;
        std::vector<std::size_t> children;
    };

    void addOutline()
    {
        const auto &bookmarks = m_layout.bookmarks();
        if (bookmarks.empty())
            return;
        std::vector<Entry> entries;
        entries.push_back({m_pdf.makeIndirectObject(Object::newDictionary()), 0, {}});
        std::vector<std::size_t> open{0}; // from the root to the latest entry
        for (const PagedLayout::Bookmark &bookmark : bookmarks) {
            while (entries[open.back()].level >= bookmark.level)
                open.pop_back();
            const std::size_t parent = open.back();
            Object entry = m_pdf.makeIndirectObject(Object::newDictionary());
            entry.replaceKey("/Title", textObject(bookmark.text));
            entry.replaceKey("/Dest", destination(bookmark));
            entry.replaceKey("/Parent", entries[parent].object);
            entries[parent].children.push_back(entries.size());
            open.push_back(entries.size());
            entries.push_back({entry, bookmark.level, {}});
        }
        for (Entry &entry : entries)
            linkChildren(entries, entry);
        entries.front().object.replaceKey("/Type", nameObject("/Outlines"));
        m_pdf.getRoot().replaceKey("/Outlines", entries.front().object);
        m_pdf.getRoot().replaceKey("/PageMode", nameObject("/UseOutlines"));
    }

    static void linkChildren(std::vector<Entry> &entries, Entry &entry)
    {
        if (entry.children.empty())
            return;
        for (std::size_t i = 0; i < entry.children.size(); ++i) {
            Object child = entries[entry.children[i]].object;
            if (i > 0)
                child.replaceKey("/Prev", entries[entry.children[i - 1]].object);
            if (i + 1 < entry.children.size())
                child.replaceKey("/Next", entries[entry.children[i + 1]].object);
        }
        entry.object.replaceKey("/First", entries[entry.children.front()].object);
        entry.object.replaceKey("/Last", entries[entry.children.back()].object);
        // The number of entries in view: sections open at once, what is inside them stays folded.
        const auto count = static_cast<long long>(entry.children.size());
        entry.object.replaceKey("/Count", Object::newInteger(entry.level == 0 ? count : -count));
    }

    void addLinks()
    {
        const double height = m_layout.pageSize().height();
        for (const PagedLayout::Link &link : m_layout.links()) {
            Object annotation = Object::newDictionary();
            annotation.replaceKey("/Type", nameObject("/Annot"));
            annotation.replaceKey("/Subtype", nameObject("/Link"));
            annotation.replaceKey("/Rect",
                                  Object::newArray({Object::newReal(link.area.left(), 2),
                                                    Object::newReal(height - link.area.bottom(), 2),
                                                    Object::newReal(link.area.right(), 2),
                                                    Object::newReal(height - link.area.top(), 2)}));
            annotation.replaceKey("/Border",
                                  Object::newArray({Object::newInteger(0), Object::newInteger(0),
                                                    Object::newInteger(0)}));
            const auto &bookmark = m_layout.bookmarks().at(link.bookmark);
            annotation.replaceKey("/Contents", textObject(bookmark.text));
            annotation.replaceKey("/Dest", destination(bookmark));
            Object page = m_pages.at(static_cast<std::size_t>(link.page)).getObjectHandle();
            if (!page.getKey("/Annots").isArray())
                page.replaceKey("/Annots", Object::newArray());
            page.getKey("/Annots").appendItem(m_pdf.makeIndirectObject(annotation));
        }
    }

    void addCatalogue()
    {
        Object root = m_pdf.getRoot();
        root.replaceKey("/Lang", textObject(m_layout.document().language));
        Object preferences = Object::newDictionary();
        preferences.replaceKey("/DisplayDocTitle", Object::newBool(true));
        root.replaceKey("/ViewerPreferences", preferences);
    }

    void addDate(const QDateTime &madeAt)
    {
        const QString date = madeAt.toUTC().toString(QStringLiteral("'D:'yyyyMMddHHmmss'Z'"));
        Object info = m_pdf.getTrailer().getKey("/Info");
        if (info.isDictionary())
            info.replaceKey("/CreationDate", Object::newString(date.toStdString()));
    }

    QPDF &m_pdf;
    const PagedLayout &m_layout;
    std::vector<QPDFPageObjectHelper> m_pages;
};

} // namespace

bool finishPdf(const QString &rawPath, const PagedLayout &layout,
               const std::optional<QDateTime> &madeAt,
               const std::function<bool(QByteArrayView)> &sink)
{
    try {
        QPDF pdf;
        pdf.setSuppressWarnings(true);
        // a file cut short must not be mended into one that lacks pages
        pdf.setAttemptRecovery(false);
        pdf.processFile(QFile::encodeName(rawPath).constData());
        Finisher(pdf, layout).run(madeAt);
        SinkPipeline pipeline(sink);
        QPDFWriter writer(pdf);
        writer.setOutputPipeline(&pipeline);
        if (madeAt)
            writer.setDeterministicID(true);
        writer.write();
        return true;
    } catch (const std::exception &) {
        return false;
    }
}

} // namespace ohmwright::sheet
