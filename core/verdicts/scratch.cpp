// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/scratch.h"

#include "core/verdicts/edit_input.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Scratch", text);
}

std::vector<Check> judged(const Book &book)
{
    return judgeBook(book.records(), book.clock().today());
}

} // namespace

Scratch::Scratch(std::unique_ptr<Book> copy)
    : m_copy(std::move(copy)), m_before(judged(*m_copy)), m_checks(m_before)
{}

Result<std::unique_ptr<Scratch>> Scratch::of(const Book &book)
{
    const Build &build = book.records().build();
    Result<std::unique_ptr<Book>> copy =
        Book::create({}, build.title, build.currency, book.clock());
    if (!copy)
        return fail(copy.error());
    const Outcome filled =
        (*copy)->edit(tr("Copy"), [&] { return (*copy)->replaceAll(book.records()); });
    if (!filled)
        return fail(filled.error());
    return std::unique_ptr<Scratch>(new Scratch(std::move(*copy)));
}

Outcome Scratch::set(const QString &address, const QString &typed)
{
    if (Outcome done = editInput(*m_copy, address, typed); !done)
        return done;
    const auto same = std::find_if(m_tried.begin(), m_tried.end(),
                                   [&](const Tried &tried) { return tried.address == address; });
    if (same != m_tried.end())
        same->typed = typed;
    else
        m_tried.push_back({address, typed});
    m_checks = judged(*m_copy);
    return {};
}

std::vector<Scratch::Turned> Scratch::turned() const
{
    std::vector<Turned> turned;
    for (const Check &now : m_checks) {
        const auto before = std::find_if(m_before.begin(), m_before.end(), [&](const Check &old) {
            return old.id == now.id && old.subject == now.subject && old.title == now.title;
        });
        if (before == m_before.end())
            turned.push_back({&now, std::nullopt});
        else if (before->verdict != now.verdict)
            turned.push_back({&now, before->verdict});
    }
    return turned;
}

Outcome Scratch::keep(Book &book) const
{
    return book.edit(tr("Keep what was tried"), [&]() -> Outcome {
        for (const Tried &tried : m_tried)
            if (Outcome done = editInput(book, tried.address, tried.typed); !done)
                return done;
        return {};
    });
}

} // namespace ohmwright
