// SPDX-License-Identifier: GPL-3.0-or-later
// What a person waits for in the window: a key in the filter, an edit on each page, turning to it.
// Painting included (offscreen), the disk's sync included in the edits: see
// plainSqliteUpdatesOneRow for its share.
#include "core/book/book.h"
#include "tests/bench/bench_book.h"
#include "tests/support/fake_outside.h"
#include "tests/support/fixed_clock.h"
#include "ui/parts/parts_list.h"
#include "ui/parts/parts_page.h"
#include "ui/shell/book_window.h"
#include "ui/shell/shell_window.h"
#include "ui/shell/theme.h"

#include <QApplication>
#include <QLineEdit>
#include <QTemporaryDir>

#include <benchmark/benchmark.h>

#include <algorithm>
#include <array>
#include <string_view>

namespace ohmwright::bench {
namespace {

constexpr std::array kPages{"bench", "parts", "build_order", "budget"};

// A window on a book of its own, each time anew, so that no benchmark feels another's edits.
struct OpenWindow
{
    explicit OpenWindow(const benchmark::State &state)
    {
        const QString path = folder.filePath(QStringLiteral("bench.ohmwright"));
        writeBook(path, state.range(0) == 0 ? kUsual : kLarge);
        theme.applyTo(*qApp);
        auto opened = Book::open(path, clock);
        book = opened->get();
        window = std::make_unique<ui::BookWindow>(std::move(*opened), theme, outside);
        window->shell().resize(1280, 800);
        window->shell().show();
        qApp->processEvents();
    }

    QTemporaryDir folder;
    FixedClock clock;
    ui::Theme theme;
    ui::FakeOutside outside;
    Book *book = nullptr;
    std::unique_ptr<ui::BookWindow> window;
};

void typeInPartsFilter(benchmark::State &state)
{
    OpenWindow open(state);
    ui::ShellWindow &shell = open.window->shell();
    shell.showPage(QStringLiteral("parts"));
    auto *page = qobject_cast<ui::PartsPage *>(shell.page(QStringLiteral("parts")));
    QLineEdit *filter = page->list().findChild<QLineEdit *>();
    const QString word = QStringLiteral("inverter");
    qsizetype typed = 0;
    for (auto _ : state) {
        typed = typed % word.size() + 1;
        filter->setText(word.left(typed));
        qApp->processEvents();
    }
}
BENCHMARK(typeInPartsFilter)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

// An edit of what the page shows: a part's place, whether a task is under way, a payment's sum; on
// the bench the task too.
Outcome editForPage(Book &book, std::string_view page, int n)
{
    const Records &records = book.records();
    if (page == "parts") {
        Part part = records.all<Part>().rows()[7];
        part.place = QString::number(n);
        return book.edit(QStringLiteral("place"), [&] { return book.update(part); });
    }
    if (page == "budget") {
        PurchaseItem item = records.all<PurchaseItem>().rows()[7];
        item.unitPrice = Money(100 + n, item.unitPrice.currency());
        return book.edit(QStringLiteral("price"), [&] { return book.update(item); });
    }
    const auto &tasks = records.all<Task>().rows();
    Task task = *std::find_if(tasks.begin(), tasks.end(),
                              [](const Task &t) { return t.state != TaskState::Done; });
    task.state = n % 2 == 0 ? TaskState::Open : TaskState::Started;
    return book.edit(QStringLiteral("state"), [&] { return book.update(task); });
}

void editWhilePageIsShown(benchmark::State &state)
{
    OpenWindow open(state);
    const char *page = kPages.at(static_cast<std::size_t>(state.range(1)));
    state.SetLabel(page);
    open.window->shell().showPage(QString::fromLatin1(page));
    qApp->processEvents();
    int n = 0;
    for (auto _ : state) {
        if (const Outcome done = editForPage(*open.book, page, ++n); !done)
            state.SkipWithError(done.error().sentence.toUtf8().constData());
        qApp->processEvents();
    }
}
BENCHMARK(editWhilePageIsShown)->ArgsProduct({{0, 1}, {0, 1, 2, 3}})->Unit(benchmark::kMillisecond);

void turnToPage(benchmark::State &state)
{
    OpenWindow open(state);
    const char *page = kPages.at(static_cast<std::size_t>(state.range(1)));
    state.SetLabel(page);
    for (auto _ : state) {
        state.PauseTiming();
        open.window->shell().showPage(
            QString::fromLatin1(state.range(1) == 0 ? kPages[1] : kPages[0]));
        qApp->processEvents();
        state.ResumeTiming();
        open.window->shell().showPage(QString::fromLatin1(page));
        qApp->processEvents();
    }
}
BENCHMARK(turnToPage)->ArgsProduct({{0, 1}, {0, 1, 2, 3}})->Unit(benchmark::kMillisecond);

void openBookAndWindow(benchmark::State &state)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("bench.ohmwright"));
    writeBook(path, state.range(0) == 0 ? kUsual : kLarge);
    const FixedClock clock;
    ui::Theme theme;
    theme.applyTo(*qApp);
    ui::FakeOutside outside;
    for (auto _ : state) {
        auto opened = Book::open(path, clock);
        ui::BookWindow window(std::move(*opened), theme, outside);
        window.shell().resize(1280, 800);
        window.shell().show();
        qApp->processEvents();
    }
}
BENCHMARK(openBookAndWindow)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace ohmwright::bench
