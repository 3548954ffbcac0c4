using SwingStudy.App.Commands;

return Verbs.Run(args, Console.Out, Console.Error, TimeProvider.System);
