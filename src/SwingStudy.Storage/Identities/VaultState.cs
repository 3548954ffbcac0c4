namespace SwingStudy.Storage.Identities;

/// <summary>Whether names can be read.</summary>
public enum VaultState
{
    /// <summary>There is no vault: names stand in <c>identities.db</c> as they are, readable by whoever may read the file.</summary>
    Off,

    /// <summary>Names are encrypted; the passphrase was not given.</summary>
    Locked,

    /// <summary>Names are encrypted; the passphrase was given to this process.</summary>
    Open,
}
