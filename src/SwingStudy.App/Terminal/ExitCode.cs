namespace SwingStudy.App.Terminal;

/// <summary>What the process tells the shell.</summary>
internal enum ExitCode
{
    /// <summary>Done.</summary>
    Done = 0,

    /// <summary>Done, with findings that need a person: held files, failed verification.</summary>
    NeedsPerson = 1,

    /// <summary>The command line is wrong.</summary>
    WrongUsage = 2,

    /// <summary>Input or a declaration is invalid.</summary>
    InvalidInput = 3,

    /// <summary>A rule of the study forbids it.</summary>
    Refused = 4,

    /// <summary>A fault of the program or the machine.</summary>
    Fault = 5,
}
