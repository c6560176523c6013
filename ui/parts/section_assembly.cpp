// SPDX-License-Identifier: GPL-3.0-or-later
// Parts within parts, what replaces it, and its pictures.
#include "core/budget/cost_row.h"
#include "core/parts/assembly.h"
#include "core/parts/compare.h"
#include "ui/parts/part_sections.h"
#include "ui/widgets/drop_area.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/section_title.h"

#include <QBuffer>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QImageReader>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

constexpr int kThumb = 96;
constexpr int kThumbsInRow = 3;

} // namespace

AssemblySection::AssemblySection(const DetailGround &given) : DetailSection(given, tr("Assembly"))
{
    m_list = addList(4);
}

void AssemblySection::fill(const Part &part, bool)
{
    emptyLayout(*m_list);
    const AssemblyTree tree(records());
    const std::vector<Id<Part>> &within = tree.within(part.id);
    const Part *next = records().find(part.replacedBy);
    setVisible(part.partOf || !within.empty() || next);
    if (part.partOf)
        m_list->addWidget(makeWords(theme(), tree.path(part.id).join(tr(" › "))));
    title().setRemark(within.empty() ? QString() : tr("parts in it: %1").arg(within.size()));
    const auto link = [this](const Part &other) {
        auto *button = new QPushButton(tr("%1, %2").arg(other.name, wordOf(other.state)));
        button->setAccessibleName(tr("Show %1").arg(other.name));
        const Id<Part> id = other.id;
        connect(button, &QPushButton::clicked, this, [this, id] { emit partWanted(id); });
        m_list->addWidget(button, 0, Qt::AlignLeft);
    };
    if (const Part *above = records().find(part.partOf))
        link(*above);
    for (const Id<Part> id : within)
        if (const Part *inner = records().find(id))
            link(*inner);
    if (next) {
        m_list->addWidget(makeWords(theme(), tr("Replaced by"), Lettering::Strong));
        link(*next);
        compare(part, *next);
    }
}

// Old and new side by side, figure by figure.
void AssemblySection::compare(const Part &old, const Part &next)
{
    Result<SideBySide> compared = compareUnits(records(), {old.id, next.id});
    if (!compared) // one that replaces itself has nothing to be held against
        return;
    auto *holder = new QWidget;
    auto *grid = new QGridLayout(holder);
    grid->setContentsMargins(0, 4, 0, 0);
    grid->setHorizontalSpacing(18);
    grid->setVerticalSpacing(2);
    grid->setColumnStretch(0, 1);
    if (auto cost = landedCostRow(records(), compared->units))
        compared->rows.push_back(std::move(*cost));
    int row = 0;
    const auto add = [&](const QString &what, const QString &a, const QString &b,
                         Lettering lettering) {
        grid->addWidget(makeWords(theme(), what, Lettering::Small, true), row, 0);
        grid->addWidget(makeWords(theme(), a, lettering), row, 1, Qt::AlignRight);
        grid->addWidget(makeWords(theme(), b, lettering), row, 2, Qt::AlignRight);
        ++row;
    };
    const auto value = [](const ComparedCell &cell) {
        return cell.value.isEmpty() ? tr("not known") : cell.value;
    };
    add({}, tr("old"), tr("new"), Lettering::Strong);
    for (const ComparedRow &one : compared->rows) {
        const bool differs = one.agreement == Agreement::Differs;
        add(differs ? tr("%1, differs").arg(one.what) : one.what, value(one.cells[0]),
            value(one.cells[1]), differs ? Lettering::Strong : Lettering::Body);
    }
    m_list->addWidget(holder);
}

PicturesSection::PicturesSection(const DetailGround &given)
    : DetailSection(given, tr("Photos and papers")), m_opener(given.book, given.outside)
{
    auto *holder = new QWidget;
    m_grid = new QGridLayout(holder);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setSpacing(8);
    m_grid->setColumnStretch(kThumbsInRow, 1);
    column().addWidget(holder);
    m_drop = new DropArea(theme());
    column().addWidget(m_drop);
    m_links = addList(4);
    m_link = new EntryForm(theme(), tr("Add link"));
    m_link->addLine(QStringLiteral("url"), tr("Address of a page"));
    m_link->addLine(QStringLiteral("title"), tr("What it shows"), EntryForm::Width::Half);
    m_link->addLine(QStringLiteral("read_on"), tr("Read on"), EntryForm::Width::Half);
    m_link->setHint(QStringLiteral("read_on"), tr("empty: today"));
    m_link->setSave([this] { return addLinkTyped(); });
    column().addWidget(m_link);
    connect(m_drop, &DropArea::filesCame, this, &PicturesSection::takeFiles);
    connect(m_drop, &DropArea::pictureCame, this, &PicturesSection::takePicture);
    connect(m_drop, &DropArea::refused, this,
            [this](const QString &why) { emit said(why, Tone::Problem); });
    connect(m_drop, &DropArea::chooseWanted, this, [this] {
        takeFiles(ground().outside.chooseFiles(
            this, tr("Photos and papers of the part"),
            tr("Photos and papers (*.jpg *.jpeg *.png *.webp *.pdf)")));
    });
}

QImage PicturesSection::thumbnail(const Attachment &attachment)
{
    const auto known = m_thumbnails.constFind(attachment.sha256);
    if (known != m_thumbnails.constEnd())
        return *known;
    QImage small;
    if (attachment.mediaType.startsWith(QLatin1String("image/"))) {
        if (Result<QByteArray> bytes = book().blob(attachment.sha256)) {
            QBuffer buffer(&*bytes);
            QImageReader reader(&buffer);
            reader.setAutoTransform(true);
            // decoded small: a whole photo takes too long while one looks through a list
            if (const QSize whole = reader.size(); whole.isValid())
                reader.setScaledSize(whole.scaled(kThumb * 2, kThumb * 2, Qt::KeepAspectRatio));
            small = reader.read();
        }
    }
    m_thumbnails.insert(attachment.sha256, small);
    return small;
}

void PicturesSection::fill(const Part &part, bool another)
{
    emptyLayout(*m_grid);
    int at = 0;
    for (const Attachment &attachment : records().all<Attachment>()) {
        if (attachment.part != part.id || attachment.sha256.isEmpty())
            continue;
        const Id<Attachment> id = attachment.id;
        auto *picture = new QToolButton;
        const QImage small = thumbnail(attachment);
        picture->setIconSize({kThumb, kThumb});
        if (small.isNull())
            picture->setText(attachment.fileName);
        else
            picture->setIcon(QIcon(QPixmap::fromImage(small)));
        picture->setToolTip(attachment.title);
        picture->setAccessibleName(tr("Open %1").arg(attachment.title));
        picture->setFocusPolicy(Qt::StrongFocus);
        connect(picture, &QToolButton::clicked, this, [this, id] { open(id); });
        auto *remove = new QPushButton(tr("Remove"));
        remove->setAccessibleName(tr("Remove %1").arg(attachment.title));
        connect(remove, &QPushButton::clicked, this, [this, id] {
            tell(book().edit(tr("Remove a photo"), [&]() -> Outcome { return book().remove(id); }));
        });
        auto *cell = new QVBoxLayout;
        cell->setSpacing(2);
        cell->addWidget(picture);
        cell->addWidget(remove);
        m_grid->addLayout(cell, at / kThumbsInRow, at % kThumbsInRow);
        ++at;
    }
    emptyLayout(*m_links);
    for (const Attachment &attachment : records().all<Attachment>()) {
        if (attachment.part != part.id || attachment.kind != AttachmentKind::Link)
            continue;
        ++at;
        auto *holder = new QWidget;
        auto *row = new QHBoxLayout(holder);
        row->setContentsMargins(0, 0, 0, 0);
        QString words = attachment.title == attachment.url
                            ? attachment.url
                            : tr("%1, %2").arg(attachment.title, attachment.url);
        if (attachment.readOn)
            words = tr("%1, read %2").arg(words, showDate(*attachment.readOn));
        auto *label = makeWords(theme(), words, Lettering::Small);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
        label->setAccessibleName(words);
        // an address has no place to break, and must not widen the whole detail
        label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
        label->setToolTip(attachment.url);
        row->addWidget(label, 1);
        const Id<Attachment> id = attachment.id;
        auto *see = new QPushButton(tr("Open"));
        see->setAccessibleName(tr("Open %1").arg(attachment.title));
        connect(see, &QPushButton::clicked, this, [this, id] { open(id); });
        row->addWidget(see, 0, Qt::AlignTop);
        auto *remove = new QPushButton(tr("Remove"));
        remove->setAccessibleName(tr("Remove %1").arg(attachment.title));
        connect(remove, &QPushButton::clicked, this, [this, id] {
            tell(book().edit(tr("Remove a link"), [&]() -> Outcome { return book().remove(id); }));
        });
        row->addWidget(remove, 0, Qt::AlignTop);
        m_links->addWidget(holder);
    }
    title().setRemark(at == 0 ? QString() : QString::number(at));
    if (another) {
        m_link->clearProblems();
        for (const char *name : {"url", "title", "read_on"})
            m_link->setText(QString::fromLatin1(name), {});
    }
}

Outcome PicturesSection::addLinkTyped()
{
    const QDate today = book().clock().today();
    const auto on = m_link->date(QStringLiteral("read_on"), today);
    if (!on)
        return fail(on.error());
    Attachment like;
    like.part = part();
    Outcome done = addLink(book(), m_link->text(QStringLiteral("url")),
                           m_link->text(QStringLiteral("title")), on->value_or(today), like);
    if (done)
        for (const char *name : {"url", "title", "read_on"})
            m_link->setText(QString::fromLatin1(name), {});
    return done;
}

void PicturesSection::takeFiles(const QStringList &paths)
{
    const Result<std::vector<NewFile>> files = readFiles(paths);
    if (!files)
        emit said(sentenceOf(files.error()), Tone::Problem);
    else
        keep(*files);
}

void PicturesSection::takePicture(const QImage &picture)
{
    NewFile one{{}, tr("pasted.png"), QStringLiteral("image/png")};
    QBuffer buffer(&one.bytes);
    buffer.open(QIODevice::WriteOnly);
    if (!picture.save(&buffer, "PNG")) {
        emit said(tr("The pasted picture cannot be kept as PNG."), Tone::Problem);
        return;
    }
    keep({one});
}

void PicturesSection::keep(const std::vector<NewFile> &files)
{
    const Part *now = partNow();
    if (!now)
        return;
    Attachment like;
    like.part = part();
    like.title = now->name;
    tell(addFiles(book(), files, like));
}

void PicturesSection::open(Id<Attachment> id)
{
    tell(m_opener.open(id));
}

} // namespace ohmwright::ui
