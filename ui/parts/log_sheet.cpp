// SPDX-License-Identifier: GPL-3.0-or-later
// The sheet's building and behaviour; what is read from it is in log_sheet_entry.cpp. Over 400
// lines because the fields read best in one place, in the order in which they are filled in.
#include "ui/parts/log_sheet.h"

#include "core/verdicts/judge_candidate.h"
#include "ui/checks/check_words.h"
#include "ui/parts/part_words.h"
#include "ui/parts/rating_line.h"
#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/drop_area.h"
#include "ui/widgets/field.h"
#include "ui/widgets/section_title.h"
#include "ui/widgets/state_mark.h"

#include <QBuffer>
#include <QClipboard>
#include <QComboBox>
#include <QFile>
#include <QFileInfo>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QMimeDatabase>
#include <QPushButton>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kThumb = 104;

QImage thumbnail(const QImage &picture)
{
    return picture.isNull()
               ? picture
               : picture.scaled(kThumb, kThumb, Qt::KeepAspectRatio, Qt::SmoothTransformation);
}

} // namespace

LogSheet::LogSheet(Book &book, const Theme &theme, Outside &outside, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_outside(outside)
{
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->setSpacing(8);

    auto *content = new QWidget;
    auto *column = new QVBoxLayout(content);
    column->setContentsMargins(20, 6, 20, 12);
    column->setSpacing(10);
    column->addWidget(new SectionTitle(theme, tr("Log a part"), TitleLevel::Page));

    m_name = new QLineEdit;
    addField(*column, "name", tr("&Name"), m_name);
    m_kind = new QComboBox;
    addWords<PartKind>(*m_kind);
    m_state = new QComboBox;
    for (const PartState one : {PartState::InHand, PartState::Ordered, PartState::Wanted})
        m_state->addItem(wordOf(one), static_cast<int>(one));
    column->addWidget(pair(addField(*column, "kind", tr("&Kind"), m_kind),
                           addField(*column, "state", tr("&State"), m_state)));
    connect(m_state, &QComboBox::currentIndexChanged, this, [this] { followState(); });

    buildPurchase(*column);
    buildFigures(*column);

    column->addWidget(new SectionTitle(theme, tr("The piece itself")));
    m_serial = new QLineEdit;
    m_place = new QLineEdit;
    column->addWidget(
        pair(addField(*column, "serial", tr("Serial n&umber"), m_serial, tr("as on its plate")),
             addField(*column, "place", tr("&Place"), m_place, tr("shelf, box; may wait"))));
    m_condition = new QLineEdit;
    addField(*column, "condition", tr("Condition as it came"), m_condition,
             tr("dents, cut cables, missing seals; may wait"));
    m_drop = new DropArea(theme);
    column->addWidget(m_drop);
    column->addStretch(1);
    connect(m_drop, &DropArea::filesCame, this, &LogSheet::takeFiles);
    connect(m_drop, &DropArea::pictureCame, this, &LogSheet::takePicture);
    connect(m_drop, &DropArea::refused, this, [this](const QString &why) { m_told->setText(why); });
    connect(m_drop, &DropArea::chooseWanted, this, [this] {
        takeFiles(m_outside.chooseFiles(this, tr("Photos of the part"),
                                        tr("Photos and papers (*.jpg *.jpeg *.png *.webp *.pdf)")));
    });

    m_scroll = new QScrollArea;
    m_scroll->setWidget(content);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    outer->addWidget(m_scroll, 1);

    m_told = new QLabel;
    m_told->setTextFormat(Qt::PlainText);
    m_told->setWordWrap(true);
    m_told->setFont(theme.font(Lettering::Small));
    auto *save = new QPushButton(tr("Save part (Enter)"));
    makePrimary(*save);
    auto *close = new QPushButton(tr("Close (Escape)"));
    auto *foot = new QHBoxLayout;
    foot->setContentsMargins(20, 0, 20, 12);
    foot->addWidget(m_told, 1);
    foot->addWidget(close);
    foot->addWidget(save);
    outer->addLayout(foot);
    connect(save, &QPushButton::clicked, this, &LogSheet::save);
    connect(close, &QPushButton::clicked, this, &LogSheet::closed);

    // pasting a photo works wherever the cursor is
    for (QLineEdit *line : findChildren<QLineEdit *>())
        line->installEventFilter(this);
    showMore(false);
    followPrice();
    offerKnown();
}

Field *LogSheet::addField(QVBoxLayout &column, const char *where, const QString &label,
                          QWidget *editor, const QString &hint)
{
    auto *field = new Field(m_theme, label, editor);
    field->setHint(hint);
    m_fields[QString::fromLatin1(where)] = field;
    column.addWidget(field);
    if (auto *line = qobject_cast<QLineEdit *>(editor))
        connect(line, &QLineEdit::textEdited, field, [field] { field->setProblem({}); });
    return field;
}

// Two fields side by side; they keep the order in which they are passed to the Tab key.
QWidget *LogSheet::pair(QWidget *left, QWidget *right)
{
    auto *both = new QWidget;
    auto *row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(12);
    row->addWidget(left, 1, Qt::AlignTop);
    row->addWidget(right, 1, Qt::AlignTop);
    return both;
}

void LogSheet::buildPurchase(QVBoxLayout &column)
{
    column.addWidget(new SectionTitle(m_theme, tr("Where it came from")));
    m_seller = new PickOrNew(m_theme);
    m_sellerKind = new QComboBox;
    addWords<SellerKind>(*m_sellerKind);
    column.addWidget(pair(addField(column, "seller", tr("S&eller"), m_seller),
                          addField(column, "seller_kind", tr("Kind of seller"), m_sellerKind)));
    m_fields.at(QStringLiteral("seller_kind"))->hide();
    connect(m_seller, &QLineEdit::textChanged, this,
            [this] { m_fields.at(QStringLiteral("seller_kind"))->setVisible(m_seller->isNew()); });
    m_donor = new PickOrNew(m_theme);
    addField(column, "donor", tr("&Donor vehicle"), m_donor, tr("make, model, year; may be empty"));

    m_price = new QLineEdit;
    m_rate = new QLineEdit;
    column.addWidget(pair(addField(column, "unit_price", tr("P&rice"), m_price),
                          addField(column, "rate", tr("Rate"), m_rate)));
    connect(m_price, &QLineEdit::textChanged, this, [this] { followPrice(); });
    connect(m_rate, &QLineEdit::textEdited, this, [this] { m_rateTyped = true; });
    connect(m_rate, &QLineEdit::editingFinished, this, &LogSheet::doubtRate);
    m_freight = new QLineEdit;
    m_on = new QLineEdit;
    column.addWidget(pair(addField(column, "freight", tr("&Freight of the order"), m_freight),
                          addField(column, "on", tr("D&ay"), m_on, tr("empty: today"))));
    connect(m_on, &QLineEdit::editingFinished, this, [this] { followPrice(); });

    m_moreButton = new QPushButton(tr("&More costs, or an order in the book"));
    m_moreButton->setCheckable(true);
    column.addWidget(m_moreButton, 0, Qt::AlignLeft);
    connect(m_moreButton, &QPushButton::toggled, this, &LogSheet::showMore);
    m_more = new QWidget;
    auto *more = new QVBoxLayout(m_more);
    more->setContentsMargins(0, 0, 0, 0);
    more->setSpacing(10);
    m_order = new PickOrNew(m_theme);
    addField(*more, "purchase", tr("Joins the order"), m_order,
             tr("its freight, duty and tax then stay as they are"));
    connect(m_order, &PickOrNew::chosen, this, [this] { followOrder(); });
    connect(m_order, &PickOrNew::newName, this, [this] { followOrder(); });
    connect(m_order, &PickOrNew::emptied, this, [this] { followOrder(); });
    m_duty = new QLineEdit;
    m_tax = new QLineEdit;
    more->addWidget(pair(addField(*more, "duty", tr("Duty of the order"), m_duty),
                         addField(*more, "tax", tr("Tax of the order"), m_tax)));
    m_core = new QLineEdit;
    m_count = new QLineEdit;
    more->addWidget(pair(addField(*more, "core_charge", tr("Deposit on the old unit"), m_core),
                         addField(*more, "count", tr("How many of them"), m_count,
                                  tr("empty: one; the price is for each"))));
    column.addWidget(m_more);
    m_warranty = new QLineEdit;
    addField(column, "warranty_days", tr("&Warranty, days"), m_warranty, tr("empty: none told"));
}

void LogSheet::buildFigures(QVBoxLayout &column)
{
    column.addWidget(new SectionTitle(m_theme, tr("What it withstands")));
    m_circuit = new PickOrNew(m_theme);
    addField(column, "circuit", tr("&Circuit"), m_circuit, tr("what it will be connected to"));
    connect(m_circuit, &PickOrNew::chosen, this, [this] { showAsked(); });
    connect(m_circuit, &PickOrNew::newName, this, [this] { showAsked(); });
    connect(m_circuit, &PickOrNew::emptied, this, [this] { showAsked(); });
    auto *asked = new QWidget;
    m_askedLayout = new QVBoxLayout(asked);
    m_askedLayout->setContentsMargins(0, 0, 0, 0);
    m_askedLayout->setSpacing(10);
    column.addWidget(asked);
    m_verdict = new StateMark(m_theme, Mark::Unknown);
    m_verdictText = new QLabel;
    m_verdictText->setWordWrap(true);
    m_verdictText->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column.addWidget(m_verdict);
    column.addWidget(m_verdictText);
    m_verdict->hide();
    m_verdictText->hide();
    m_free = new RatingLine(m_theme);
    m_free->askForSource(m_theme);
    column.addWidget(m_free);
}

void LogSheet::begin()
{
    offerKnown();
    m_told->clear();
    m_scroll->ensureVisible(0, 0);
    m_name->setFocus(Qt::OtherFocusReason);
}

void LogSheet::offerKnown()
{
    const Records &records = m_book.records();
    const auto keep = [](PickOrNew &line, std::vector<KnownName> known) {
        QString key = line.key();
        const QString name = line.name();
        // what was new when it was typed is known once it is saved
        const auto saved = std::find_if(known.begin(), known.end(), [&](const KnownName &k) {
            return k.name.compare(name, Qt::CaseInsensitive) == 0;
        });
        if (key.isEmpty() && saved != known.end())
            key = saved->key;
        line.setKnown(std::move(known));
        if (!key.isEmpty())
            line.setKey(key);
        else if (!name.isEmpty())
            line.setNewName(name);
    };
    keep(*m_seller, knownSellers(records));
    keep(*m_donor, knownDonors(records));
    keep(*m_circuit, knownCircuits(records));
    keep(*m_order, knownPurchases(records));
    followState();
}

void LogSheet::followState()
{
    const bool bought = state() != PartState::Wanted;
    for (const char *where :
         {"seller", "freight", "duty", "tax", "core_charge", "count", "purchase"})
        m_fields.at(QString::fromLatin1(where))->setEnabled(bought);
    m_fields.at(QStringLiteral("warranty_days"))->setEnabled(bought);
    followOrder();
}

void LogSheet::showMore(bool more)
{
    m_moreButton->setChecked(more);
    m_more->setVisible(more);
    // what was unfolded may lie below the edge; in reach once it has its place
    if (more)
        QTimer::singleShot(0, m_more, [this] { m_scroll->ensureWidgetVisible(m_more); });
}

void LogSheet::showAsked()
{
    const Circuit *circuit = m_book.records().byKey<Circuit>(m_circuit->key());
    m_fields.at(QStringLiteral("circuit"))->setProblem({});
    const QString key = circuit ? circuit->key : QString();
    if (key == m_askedFor)
        return;
    m_askedFor = key;
    for (RatingLine *line : m_asked) {
        line->hide();
        line->deleteLater();
    }
    m_asked.clear();
    judge();
    if (!circuit)
        return;
    QWidget *before = m_circuit;
    for (const FigureName &figure : figuresAskedOn(*circuit)) {
        auto *line = new RatingLine(m_theme, figure);
        line->askForSource(m_theme);
        m_askedLayout->addWidget(line);
        // at once: the Tab key that chose the circuit goes there next
        line->show();
        m_asked.push_back(line);
        // new widgets go to the end of the Tab order; these belong behind the circuit
        for (QWidget *stop : line->findChildren<QWidget *>()) {
            if (stop->focusPolicy() & Qt::TabFocus && !stop->focusProxy()) {
                setTabOrder(before, stop);
                before = stop;
            }
        }
        for (QLineEdit *edit : line->findChildren<QLineEdit *>()) {
            edit->installEventFilter(this);
            connect(edit, &QLineEdit::editingFinished, this, &LogSheet::judge);
        }
        for (QComboBox *choice : line->findChildren<QComboBox *>())
            connect(choice, &QComboBox::currentIndexChanged, this, &LogSheet::judge);
    }
}

void LogSheet::judge()
{
    const Circuit *circuit = m_book.records().byKey<Circuit>(m_circuit->key());
    std::vector<Rating> typed;
    for (RatingLine *line : m_asked) {
        const Result<std::optional<Amount>> value = line->value();
        if (!value || !*value)
            continue;
        Rating rating;
        const FigureName figure = line->figure();
        rating.quantity = figure.quantity;
        rating.kind = figure.kind;
        rating.basis = figure.basis;
        rating.current = figure.current;
        rating.value = *value;
        rating.evidence = line->evidence();
        rating.source = line->source();
        typed.push_back(rating);
    }
    std::optional<Check> check;
    if (circuit && !typed.empty()) {
        const QString name = m_name->text().trimmed();
        check = judgeCandidate(BookInputs(m_book.records(), m_book.clock().today()), *circuit,
                               name.isEmpty() ? tr("this part") : name, typed);
    }
    m_verdict->setVisible(check.has_value());
    m_verdictText->setVisible(check.has_value());
    if (!check)
        return;
    m_verdict->setMark(markOf(check->verdict));
    m_verdict->setWords(tr("%1 on circuit %2").arg(verdictWord(check->verdict), circuit->name));
    const Comparison &held = check->comparisons.front();
    m_verdictText->setText(tr("%1 at worst, %2 %3. %4")
                               .arg(held.value, held.relation == u"≤" ? tr("limit") : tr("least"),
                                    held.limit, check->sentence));
}

void LogSheet::clearForNext()
{
    // seller, donor and day are kept: parts come off one vehicle, out of one box
    for (QLineEdit *line : {m_name, m_price, m_rate, m_freight, m_duty, m_tax, m_core, m_count,
                            m_warranty, m_serial, m_place, m_condition})
        line->clear();
    m_rateTyped = false;
    m_order->setKey({});
    m_free->clear();
    for (RatingLine *line : m_asked)
        line->clear();
    judge();
    m_photos.clear();
    showPhotos();
    showMore(false);
    followOrder();
}

bool LogSheet::save()
{
    clearProblems();
    const Result<LogEntry> entry = readEntry();
    if (!entry) {
        refuse(entry.error());
        return false;
    }
    const Result<Id<Part>> part = logPart(m_book, *entry);
    if (!part) {
        refuse(part.error());
        return false;
    }
    clearForNext();
    offerKnown();
    m_told->setText(tr("Logged %1. The next one:").arg(entry->name));
    m_name->setFocus(Qt::OtherFocusReason);
    m_scroll->ensureVisible(0, 0);
    emit logged(*part);
    return true;
}

void LogSheet::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        save();
        return;
    }
    if (event->key() == Qt::Key_Escape) {
        emit closed();
        return;
    }
    QWidget::keyPressEvent(event);
}

bool LogSheet::eventFilter(QObject *watched, QEvent *event)
{
    if (event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent *>(event)->matches(QKeySequence::Paste)) {
        const QMimeData *mime = QGuiApplication::clipboard()->mimeData();
        if (mime && (mime->hasImage() || mime->hasUrls()) && m_drop->paste())
            return true;
    }
    return QWidget::eventFilter(watched, event);
}

void LogSheet::takeFiles(const QStringList &paths)
{
    for (const QString &path : paths) {
        QFile file(path);
        if (!file.open(QIODevice::ReadOnly)) {
            m_told->setText(tr("%1 cannot be read: %2.").arg(path, file.errorString()));
            continue;
        }
        Photo photo;
        photo.photo.bytes = file.readAll();
        photo.photo.fileName = QFileInfo(path).fileName();
        photo.photo.mediaType =
            QMimeDatabase().mimeTypeForFileNameAndData(path, photo.photo.bytes).name();
        photo.small = thumbnail(QImage::fromData(photo.photo.bytes));
        m_photos.push_back(std::move(photo));
    }
    showPhotos();
}

void LogSheet::takePicture(const QImage &picture)
{
    Photo photo;
    QBuffer buffer(&photo.photo.bytes);
    buffer.open(QIODevice::WriteOnly);
    if (!picture.save(&buffer, "PNG")) {
        m_told->setText(tr("The pasted picture cannot be kept as PNG."));
        return;
    }
    photo.photo.fileName = tr("pasted.png");
    photo.photo.mediaType = QStringLiteral("image/png");
    photo.small = thumbnail(picture);
    m_photos.push_back(std::move(photo));
    showPhotos();
}

void LogSheet::showPhotos()
{
    std::vector<QImage> small;
    for (const Photo &photo : m_photos)
        small.push_back(photo.small);
    m_drop->setPictures(std::move(small));
}

} // namespace ohmwright::ui
