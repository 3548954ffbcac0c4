using System.Text;
using NodaTime;
using SwingStudy.Reporting.Documents;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.App.Studies;

/// <summary>Writes the reports of a study from its newest tables.</summary>
internal static class StudyReports
{
    /// <summary>What a report is made from.</summary>
    public static StudyReport Gather(OpenedStudy study)
    {
        var tables = ReportTables.Read(study.Tables, study.Setup.Dictionary, study.Setup.Protocol, study.Mask is { } mask ? mask.Apply : null);
        var people = study.Registry.Participants();
        return new StudyReport
        {
            Name = study.Setup.Declaration.Name,
            Zone = DateTimeZoneProviders.Tzdb[study.Setup.Declaration.Zone],
            Protocol = study.Setup.Protocol,
            Dictionary = study.Setup.Dictionary,
            Tables = tables,
            Methods = MethodNotes.Of(tables),
            History = study.Setup.History,
            LockedAt = study.Setup.History.IsLocked ? study.Setup.History.Versions[0].At : null,
            Enrolled = people.Count,
            Withdrawn = people.Count(person => person.Status == Storage.Registry.Participant.Withdrawn),
            Intake = study.Registry.IntakeCounts(),
            Safety = SafetyRecords.Summary(study),
            Versions = [.. study.Tables.Names().Select(name => (name, study.Tables.Existing(name)!.CurrentVersion))],
        };
    }

    /// <summary>Writes the report that a blind analyst may see into <c>reports/</c>, under a name of its own.</summary>
    /// <returns>The file.</returns>
    public static string WriteBlind(OpenedStudy study, StudyReport report) => Write(study, "study-blind.html", ReportWriter.Blind(report));

    /// <summary>Writes the report of the study, or of one player, into <c>reports/</c>.</summary>
    /// <returns>The file.</returns>
    public static string Write(OpenedStudy study, StudyReport report, string? participant) => participant is null
        ? Write(study, "study.html", ReportWriter.Study(report))
        : Write(study, $"{participant}.html", ReportWriter.Player(report, participant));

    private static string Write(OpenedStudy study, string name, string page)
    {
        Directory.CreateDirectory(study.Setup.Folder.Reports);
        var file = Path.Combine(study.Setup.Folder.Reports, name);
        File.WriteAllText(file, page, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        return file;
    }
}
