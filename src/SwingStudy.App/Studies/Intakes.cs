using SwingStudy.App.Terminal;
using SwingStudy.Ingestion.Intake;

namespace SwingStudy.App.Studies;

/// <summary>Joins the intake to an opened study.</summary>
internal static class Intakes
{
    /// <summary>The intake of the study.</summary>
    public static StudyIntake Of(OpenedStudy study, CommandContext context) => new(new IntakeContext
    {
        Folder = study.Setup.Folder,
        Zone = study.Setup.Declaration.Zone,
        Dictionary = study.Setup.Dictionary,
        Eligibility = study.Setup.Protocol.Eligibility,
        Mappings = study.Setup.Mappings,
        Registry = study.Registry,
        Identities = study.Identities,
        Tables = study.Tables,
        Time = context.Time,
        Actor = context.Actor,
    });
}
