// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/sheet_page.h"

#include "core/cards/record_kind.h"
#include "core/diagram/one_line.h"
#include "core/parts/attachments.h"
#include "core/sheet/build_sheet.h"
#include "core/sheet/content_hash.h"
#include "core/sheet/html_writer.h"
#include "core/verdicts/asked_by_checks.h"
#include "core/verdicts/judge_book.h"
#include "ui/cards/card_labels.h"
#include "ui/cards/card_stack.h"
#include "ui/cards/record_card.h"
#include "ui/cards/records_panel.h"
#include "ui/checks/plot_files.h"
#include "ui/sheet/paged_layout.h"
#include "ui/sheet/pages_view.h"
#include "ui/sheet/pdf_writer.h"
#include "ui/sheet/picture.h"
#include "ui/shell/outside.h"
#include "ui/shell/theme.h"
#include "ui/widgets/section_title.h"

#include <QCheckBox>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QHash>
#include <QKeyEvent>
#include <QListWidget>
#include <QPushButton>
#include <QSplitter>
#include <QVBoxLayout>

#include <algorithm>
#include <array>
#include <utility>
#include <variant>

namespace ohmwright::ui {

namespace {

// A pause in the edits long enough that the pages are worth laying out anew.
constexpr int kSettleMs = 250;
constexpr int kListWidth = 224;
constexpr int kBothFrom = 1000; // pixels: the form and half a page beside it

constexpr std::array kTables{"build",  "vehicle",     "lost_function", "mass_entry",
                             "letter", "test_record", "attachment"};

// Gives all photos on the sheet in any thread; their bytes are read here because the book belongs
// to this one.
sheet::ImageLoader photosOf(const Book &book, const sheet::Document &document)
{
    auto photos = std::make_shared<QHash<QString, QByteArray>>();
    for (const sheet::Block &block : document.blocks)
        if (const auto *row = std::get_if<sheet::FigureRow>(&block))
            for (const sheet::Figure &figure : row->figures)
                if (figure.image.bytes.isEmpty())
                    photos->insert(figure.image.id,
                                   book.blob(figure.image.id).value_or(QByteArray()));
    return sheet::reducedPictures(
        [photos](const sheet::Image &image) { return photos->value(image.id, image.bytes); });
}

} // namespace

SheetPage::SheetPage(Book &book, const Theme &theme, Outside &outside, QWidget *parent)
    : QWidget(parent), m_book(book), m_outside(outside), m_opener(book, outside),
      m_made(new QListWidget), m_side(new QWidget), m_cards(new CardStack(book, theme))
{
    makeList();
    m_title = new SectionTitle(theme, tr("Build sheet"), TitleLevel::Page);
    auto *pdf = new QPushButton(tr("Write &PDF…"));
    auto *html = new QPushButton(tr("Write &HTML…"));
    auto *full = new QCheckBox(tr("Every check in &full"));
    full->setToolTip(tr("Otherwise checks alike that hold share a table. Either way no figure, "
                        "evidence, formula or source is left out."));
    m_title->addAtEnd(pdf);
    m_title->addAtEnd(html);
    m_contents = new QListWidget;
    m_contents->setAccessibleName(tr("Sections of the build sheet"));
    m_contents->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_contents->setTextElideMode(Qt::ElideRight);
    m_pages = new PagesView(theme);

    auto *body = new QHBoxLayout;
    body->setSpacing(16);
    auto *left = new QVBoxLayout;
    left->setSpacing(8);
    left->addWidget(new SectionTitle(theme, tr("Made of")));
    left->addWidget(m_made);
    left->addWidget(new SectionTitle(theme, tr("Sections")));
    left->addWidget(m_contents, 1);
    left->addWidget(full);
    m_contents->setFixedWidth(kListWidth);
    auto *split = new QSplitter(Qt::Horizontal);
    split->setChildrenCollapsible(false);
    split->addWidget(m_side);
    split->addWidget(m_pages);
    split->setStretchFactor(0, 0);
    split->setStretchFactor(1, 1);
    split->setSizes({430, 400});
    body->addLayout(left);
    body->addWidget(split, 1);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(24, 16, 24, 16);
    column->setSpacing(12);
    column->addWidget(m_title);
    column->addLayout(body, 1);

    connect(full, &QCheckBox::toggled, this, [this](bool inFull) {
        m_working = inFull ? Working::Full : Working::Short;
        m_stale = true;
        rebuild();
    });
    connect(pdf, &QPushButton::clicked, this,
            [this] { chooseAndWrite(QStringLiteral(".pdf"), tr("PDF (*.pdf)")); });
    connect(html, &QPushButton::clicked, this,
            [this] { chooseAndWrite(QStringLiteral(".html"), tr("HTML (*.html)")); });
    connect(m_contents, &QListWidget::currentRowChanged, this, [this](int row) {
        if (m_layout && row >= 0) {
            const auto &mark = m_layout->bookmarks().at(static_cast<std::size_t>(row));
            m_pages->showPlace(mark.page, mark.top);
        }
    });
    m_worker.setMaxThreadCount(1);
    m_soon.setSingleShot(true);
    m_soon.setInterval(kSettleMs);
    connect(&m_soon, &QTimer::timeout, this, &SheetPage::rebuild);
    connect(&m_book, &Book::changed, this, [this] {
        fillList();
        m_stale = true;
        m_pauses.stop();
        m_mending.reset();
        ++m_run;
        if (isVisible())
            m_soon.start();
    });
}

SheetPage::~SheetPage() = default;

void SheetPage::makeList()
{
    m_made->setAccessibleName(tr("What the build sheet is made of"));
    m_made->setFixedWidth(kListWidth);
    m_made->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_made->installEventFilter(this);
    for (const char *table : kTables) {
        auto *item = new QListWidgetItem(m_made);
        item->setData(Qt::UserRole, QString::fromLatin1(table));
    }
    fillList();
    m_made->setFixedHeight(static_cast<int>(kTables.size()) * m_made->sizeHintForRow(0) +
                           2 * m_made->frameWidth() + 2);
    auto *column = new QVBoxLayout(m_side);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_cards, 1);
    auto *shut = new QPushButton(tr("Close"));
    shut->setAccessibleName(tr("Close what is being filled in"));
    column->addWidget(shut, 0, Qt::AlignLeft);
    m_side->setMinimumWidth(430);
    m_side->hide();
    connect(shut, &QPushButton::clicked, this, &SheetPage::close);
    connect(m_made, &QListWidget::currentRowChanged, this, &SheetPage::open);
    connect(m_made, &QListWidget::itemClicked, this, [this] { open(m_made->currentRow()); });
    connect(m_cards, &CardStack::said, this, &SheetPage::said);
    connect(m_cards, &CardStack::left, this, [this] { m_made->setFocus(); });
    connect(m_cards, &CardStack::madePanel, this, [this](RecordsPanel *panel) {
        if (panel->kind().table() != "attachment")
            return;
        auto *files = new QPushButton(tr("Add files…"));
        panel->addButton(files);
        connect(files, &QPushButton::clicked, this, &SheetPage::addFiles);
        addOpening(*panel);
    });
}

// What a photo or paper shows is judged by looking at it, beside what is written about it.
void SheetPage::addOpening(RecordsPanel &panel)
{
    auto *row = new QWidget;
    auto *line = new QHBoxLayout(row);
    line->setContentsMargins(0, 0, 0, 0);
    auto *open = new QPushButton(tr("&Open it"));
    line->addWidget(open);
    line->addStretch(1);
    RecordCard &card = panel.card();
    card.addOnTop(row, [this, open](std::int64_t id) {
        if (const Attachment *one = m_book.records().find(Id<Attachment>(id)))
            open->setAccessibleName(tr("Open %1").arg(one->title));
    });
    connect(open, &QPushButton::clicked, this, [this, &card] {
        const Outcome done = m_opener.open(Id<Attachment>(card.record()));
        if (!done)
            emit said(QString(done.error().sentence + u' ' + done.error().whatToDo).trimmed(),
                      Tone::Problem);
    });
}

void SheetPage::fillList()
{
    for (int row = 0; row < m_made->count(); ++row) {
        QListWidgetItem *item = m_made->item(row);
        const std::string table = item->data(Qt::UserRole).toString().toStdString();
        const RecordKind &kind = *recordKind(table);
        const QString name = labelText(cardLabels(table)->many);
        item->setText(
            kind.isSingle() ? name : tr("%1, %2").arg(name).arg(kind.ids(m_book.records()).size()));
    }
}

void SheetPage::open(int row)
{
    if (row < 0)
        return;
    m_cards->turnTo(m_made->item(row)->data(Qt::UserRole).toString());
    m_side->show();
    shareWidth();
}

// Half a page beside the form is of no use to either.
void SheetPage::shareWidth()
{
    m_pages->setVisible(m_side->isHidden() || width() >= kBothFrom);
}

void SheetPage::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    shareWidth();
}

void SheetPage::close()
{
    m_side->hide();
    shareWidth();
    m_made->setFocus();
    const QSignalBlocker quiet(m_made);
    m_made->setCurrentRow(-1);
}

bool SheetPage::showRecord(const QString &table, const QString &key)
{
    for (int row = 0; row < m_made->count(); ++row)
        if (m_made->item(row)->data(Qt::UserRole).toString() == table) {
            m_made->setCurrentRow(row);
            open(row);
            return key.isEmpty() || m_cards->showKey(table, key);
        }
    return false;
}

void SheetPage::addFiles()
{
    const QStringList paths =
        m_outside.chooseFiles(this, tr("Photos and papers of the vehicle as it came"),
                              tr("Photos and papers (*.jpg *.jpeg *.png *.webp *.pdf)"));
    if (paths.isEmpty())
        return;
    Attachment like;
    like.ofVehicle = true;
    like.onSheet = true;
    const Result<std::vector<NewFile>> files = readFiles(paths);
    const Outcome done = files ? ohmwright::addFiles(m_book, *files, like) : fail(files.error());
    if (!done)
        emit said(QString(done.error().sentence + u' ' + done.error().whatToDo).trimmed(),
                  Tone::Problem);
    else
        emit said(tr("Added to the vehicle as it came, and to the sheet."), Tone::Told);
}

bool SheetPage::eventFilter(QObject *watched, QEvent *event)
{
    if (watched == m_made && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent *>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Right) {
            open(std::max(0, m_made->currentRow()));
            m_cards->focusCard();
            return true;
        }
        if (key == Qt::Key_Escape && !m_side->isHidden()) {
            close();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void SheetPage::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_stale)
        rebuild();
}

// Most edits leave most plots as they are, and drawing one takes longer than looking.
QByteArray SheetPage::pictureOf(const Plot &plot)
{
    for (const auto &[drawn, picture] : m_plots)
        if (drawn == plot)
            return picture;
    constexpr std::size_t kMostKept = 64;
    if (m_plots.size() >= kMostKept)
        m_plots.clear();
    m_plots.emplace_back(plot, plotSvg(plot));
    return m_plots.back().second;
}

void SheetPage::rebuild()
{
    m_stale = false;
    m_isBeingLaidOut = true;
    const QDate today = m_book.clock().today();
    std::vector<Check> checks = judgeBook(m_book.records(), today);
    sortByDanger(checks);
    ++m_run;
    m_title->setRemark(tr("being laid out…"));
    m_mending.emplace(m_book.records(), today, std::move(checks));
    m_pauses.start([this] { return m_mending->step(); },
                   [this] {
                       std::vector<Check> mended = m_mending->take();
                       m_mending.reset();
                       layOut(std::move(mended));
                   });
}

void SheetPage::layOut(std::vector<Check> checks)
{
    const Result<std::int64_t> revision = m_book.revision();
    if (!revision) {
        emit said(revision.error().sentence, Tone::Problem);
        return;
    }
    const QDate today = m_book.clock().today();
    std::vector<Question> asked = askedByChecks(m_book.records(), checks);
    sheet::Document document =
        buildSheet(m_book.records(), {today, *revision, oneLineOf(m_book.records()).svg,
                                      [this](const Plot &plot) { return pictureOf(plot); },
                                      std::move(checks), std::move(asked), m_working});
    const auto photos = photosOf(m_book, document);
    const int run = ++m_run;
    m_worker.start([this, run, photos, document = std::move(document)]() mutable {
        auto layout = std::make_shared<const sheet::PagedLayout>(std::move(document), photos);
        QMetaObject::invokeMethod(this,
                                  [this, run, layout = std::move(layout)] { take(layout, run); });
    });
}

void SheetPage::take(std::shared_ptr<const sheet::PagedLayout> layout, int run)
{
    if (run != m_run)
        return;
    m_layout = std::move(layout);
    m_isBeingLaidOut = false;
    const sheet::Document &document = m_layout->document();
    m_title->setRemark(tr("%1 pages, %2, content %3")
                           .arg(m_layout->pageCount())
                           .arg(document.revision, sheet::shortHash(document.contentHash)));
    const QSignalBlocker quiet(m_contents);
    m_contents->clear();
    for (const auto &mark : m_layout->bookmarks())
        m_contents->addItem(QString(qsizetype{3} * (mark.level - 1), u' ') + mark.text);
    m_pages->setLayout(m_layout);
    if (!m_writeWhenReady.isEmpty())
        writeTo(std::exchange(m_writeWhenReady, QString()));
}

void SheetPage::chooseAndWrite(const QString &suffix, const QString &filter)
{
    const QString name = QFileInfo(m_book.path()).completeBaseName();
    QString path = m_outside.chooseSaveFile(
        this, tr("Write the build sheet"),
        (name.isEmpty() ? tr("build") : name) + QStringLiteral("-sheet") + suffix, filter);
    if (path.isEmpty())
        return;
    if (QFileInfo(path).suffix().isEmpty())
        path += suffix;
    writeTo(path);
}

void SheetPage::writeTo(const QString &path)
{
    if (m_stale || m_isBeingLaidOut) {
        m_writeWhenReady = path;
        if (m_stale)
            rebuild();
        return;
    }
    emit said(tr("Writing %1…").arg(path), Tone::Told);
    m_worker.start(
        [this, path, layout = m_layout, photos = photosOf(m_book, m_layout->document())] {
            const Outcome written = path.endsWith(QLatin1String(".html"), Qt::CaseInsensitive)
                                        ? sheet::writeHtml(layout->document(), path, photos)
                                        : sheet::writePdf(*layout, path);
            QMetaObject::invokeMethod(this, [this, path, written] {
                if (written)
                    emit said(tr("Wrote %1.").arg(path), Tone::Told);
                else
                    emit said(written.error().sentence + u' ' + written.error().whatToDo,
                              Tone::Problem);
            });
        });
}

} // namespace ohmwright::ui
