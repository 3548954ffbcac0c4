namespace SwingStudy.Domain.Studies;

/// <summary>Where things lie in a study folder.</summary>
/// <param name="Root">Absolute path of the folder.</param>
public sealed record StudyFolder(string Root)
{
    /// <summary>The study's declaration.</summary>
    public string StudyFile => Path.Combine(Root, "study.yaml");

    /// <summary>The plan.</summary>
    public string ProtocolFile => Path.Combine(Root, "protocol.yaml");

    /// <summary>One mapping per export layout.</summary>
    public string Sources => Path.Combine(Root, "sources");

    /// <summary>Exports are dropped here, in one folder a source.</summary>
    public string Inbox => Path.Combine(Root, "inbox");

    /// <summary>Untouched bytes by hash.</summary>
    public string Originals => Path.Combine(Root, "originals");

    /// <summary>Versioned tables.</summary>
    public string Tables => Path.Combine(Root, "tables");

    /// <summary>Named releases.</summary>
    public string Releases => Path.Combine(Root, "releases");

    /// <summary>Registry: people's codes, sessions, decisions, ledger.</summary>
    public string Registry => Path.Combine(Root, "study.db");

    /// <summary>The vault of names.</summary>
    public string Identities => Path.Combine(Root, "identities.db");

    /// <summary>Reports.</summary>
    public string Reports => Path.Combine(Root, "reports");

    /// <summary>Logs, one file a run.</summary>
    public string Logs => Path.Combine(Root, "logs");
}
