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
        var tables = ReportTables.Read(study.Tables, study.Setup.Dictionary, study.Setup.Protocol);
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

    /// <summary>Writes the report of the study, or of one player, into <c>reports/</c>.</summary>
    /// <returns>The file.</returns>
    public static string Write(OpenedStudy study, StudyReport report, string? participant)
    {
        Directory.CreateDirectory(study.Setup.Folder.Reports);
        var file = Path.Combine(study.Setup.Folder.Reports, participant is null ? "study.html" : $"{participant}.html");
        File.WriteAllText(file, participant is null ? ReportWriter.Study(report) : ReportWriter.Player(report, participant), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        return file;
    }
}
