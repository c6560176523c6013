// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/check_words.h"

#include <QCoreApplication>

namespace ohmwright::ui {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("ohmwright::ui::CheckWords", text);
}

} // namespace

Mark markOf(Verdict verdict)
{
    switch (verdict) {
    case Verdict::Holds:
        return Mark::Holds;
    case Verdict::Tight:
        return Mark::Tight;
    case Verdict::Unknown:
        return Mark::Unknown;
    case Verdict::Fails:
        return Mark::Fails;
    }
    Q_UNREACHABLE();
}

QString verdictWord(Verdict verdict)
{
    return markWord(markOf(verdict));
}

QString protectedName(Protects what)
{
    switch (what) {
    case Protects::People:
        return tr("People");
    case Protects::Pack:
        return tr("Pack");
    case Protects::Electronics:
        return tr("Electronics");
    case Protects::Driveline:
        return tr("Driveline");
    case Protects::Chassis:
        return tr("Chassis");
    }
    Q_UNREACHABLE();
}

QString evidenceWord(Evidence evidence)
{
    switch (evidence) {
    case Evidence::Datasheet:
        return tr("datasheet");
    case Evidence::Nameplate:
        return tr("nameplate");
    case Evidence::ServiceManual:
        return tr("service manual");
    case Evidence::Measured:
        return tr("measured");
    case Evidence::Seller:
        return tr("seller's word");
    case Evidence::Community:
        return tr("hearsay");
    case Evidence::Assumed:
        return tr("assumed");
    }
    Q_UNREACHABLE();
}

QString checkKey(const Check &check)
{
    const QChar apart(0x1F);
    return QString(check.id + apart + check.subject + apart + check.title);
}

QString toldOf(const Problem &problem)
{
    return problem.whatToDo.isEmpty()
               ? problem.sentence
               : QString(problem.sentence + QLatin1Char(' ') + problem.whatToDo);
}

} // namespace ohmwright::ui
