;;; emacs.el --- what eglot sees of the server  -*- lexical-binding: t; -*-
;; Opens the file of the request with eglot, edits, hovers and formats it, and writes what it saw as JSON.

(require 'eglot)
(require 'json)

(defvar ask (let ((json-object-type 'plist) (json-array-type 'list))
              (json-read-from-string (getenv "SPARWRIGHT_REQUEST"))))
(defvar settled 0)

(define-derived-mode airframe-mode prog-mode "Airframe"
  (setq-local comment-start "# "))
(add-to-list 'auto-mode-alist '("\\.airframe\\'" . airframe-mode))

(defclass sparwright-server (eglot-lsp-server) ())
(cl-defmethod eglot-initialization-options ((_server sparwright-server))
  '(:status t))
(cl-defmethod eglot-handle-notification ((_server sparwright-server) (_method (eql sparwright/status)) &rest status)
  (unless (equal (plist-get status :state) "working")
    (setq settled (1+ settled))))

(defun pump (what condition)
  (let ((deadline (+ (float-time) 20)))
    (while (not (funcall condition))
      (when (> (float-time) deadline) (error "waited for %s" what))
      (accept-process-output nil 0.02))))

(defun utf16-column (position)
  (save-excursion
    (goto-char position)
    (/ (length (encode-coding-string (buffer-substring-no-properties (line-beginning-position) position) 'utf-16le)) 2)))

(defun diagnostics ()
  (flymake-start)
  (pump "flymake" (lambda () (not (flymake-running-backends-pending))))
  (vconcat
   (mapcar (lambda (each)
             (let ((raw (cdr (assoc 'eglot-lsp-diag (flymake-diagnostic-data each))))
                   (beg (flymake-diagnostic-beg each)))
               `((line . ,(1- (line-number-at-pos beg t)))
                 (character . ,(utf16-column beg))
                 (severity . ,(plist-get raw :severity))
                 (message . ,(plist-get raw :message)))))
           (flymake-diagnostics))))

(defun flymake-running-backends-pending ()
  (cl-set-difference (flymake-running-backends) (flymake-reporting-backends)))

(let* ((edit (plist-get ask :edit))
       (place (plist-get ask :hover))
       (seen nil)
       (eglot-sync-connect 20)
       (eglot-send-changes-idle-time 0))
  (find-file (plist-get ask :file))
  (eglot '(airframe-mode) (cons 'transient (plist-get ask :root)) 'sparwright-server
         (plist-get ask :command) "airframe")
  (pump "the first figures" (lambda () (> settled 0)))
  (push (cons 'opened (diagnostics)) seen)

  (let ((before settled))
    (goto-char (point-min))
    (search-forward (plist-get edit :from))
    (replace-match (plist-get edit :to) t t)
    (eglot--signal-textDocument/didChange)
    (pump "the figures after the edit" (lambda () (> settled before))))
  (push (cons 'edited (diagnostics)) seen)

  (let* ((answer (jsonrpc-request (eglot-current-server) :textDocument/hover
                                  (list :textDocument (eglot--TextDocumentIdentifier)
                                        :position place)))
         (contents (plist-get answer :contents)))
    (push (cons 'hover (or (if (stringp contents) contents (plist-get contents :value)) "")) seen))

  (eglot-format)
  (push (cons 'formatted (buffer-substring-no-properties (point-min) (point-max))) seen)
  (with-temp-file (plist-get ask :out)
    (set-buffer-file-coding-system 'utf-8-unix)
    (insert (json-encode seen))))
